using ToolLedger.Reconciliation;

namespace ToolLedger.Testing.Laws;

/// <summary>A rule that never objects.</summary>
internal sealed class SilentRule : IReconciliationRule
{
    public string Name => "laws-silent";

    public string Version => "1";

    public string Settings => "";

    public Verdict Judge(in LineFacts facts) => Verdict.NoObjection;
}
