using ToolLedger.Reconciliation;

namespace ToolLedger.Benchmarks.Reconciliation;

/// <summary>A rule of a host that changes nothing: with it every kit is judged with care.</summary>
internal sealed class NeverObjects : IReconciliationRule
{
    public string Name => "never-objects";

    public string Version => "1";

    public string Settings => "";

    public Verdict Judge(in LineFacts facts) => Verdict.NoObjection;
}
