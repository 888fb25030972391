using System.Linq;
using BenchmarkDotNet.Running;
using ToolLedger.Benchmarks.Identifiers;

namespace ToolLedger.Benchmarks;

internal static class Program
{
    private static int Main(string[] arguments)
    {
        if (arguments is ["identifier-ratios", ..])
        {
            return IdentifierRatios.Run();
        }

        return BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(arguments).Any() ? 0 : 1;
    }
}
