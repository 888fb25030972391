using System.Linq;
using BenchmarkDotNet.Running;
using ToolLedger.Benchmarks.Calibration;
using ToolLedger.Benchmarks.Identifiers;
using ToolLedger.Benchmarks.Interchange;
using ToolLedger.Benchmarks.Ledger;
using ToolLedger.Benchmarks.Presence;
using ToolLedger.Benchmarks.Reads;
using ToolLedger.Benchmarks.Reconciliation;

namespace ToolLedger.Benchmarks;

internal static class Program
{
    private static int Main(string[] arguments)
    {
        return arguments switch
        {
            ["calibration-ratios", ..] => CalibrationRatios.Run(),
            ["identifier-ratios", ..] => IdentifierRatios.Run(),
            ["ledger-ratios", ..] => LedgerRatios.Run(),
            ["llrp-ratios", ..] => LlrpRatios.Run(),
            ["parse-ratios", ..] => ParseRatios.Run(),
            ["presence-ratios", ..] => PresenceRatios.Run(),
            ["read-ratios", ..] => ReadRatios.Run(),
            ["reconcile-ratios", ..] => ReconcileRatios.Run(),
            ["site-ratios", ..] => SiteRatios.Run(),
            _ => BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(arguments).Any() ? 0 : 1,
        };
    }
}
