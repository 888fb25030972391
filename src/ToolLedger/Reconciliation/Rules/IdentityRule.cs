namespace ToolLedger.Reconciliation.Rules;

/// <summary>A tool whose identity is in doubt, and that was not sighted by its own mark since, is a conflict (trade rules: the mark wins, radio cannot see a swap).</summary>
internal sealed class IdentityRule : IReconciliationRule
{
    public string Name => "identity";

    public string Version => "1";

    public string Settings => "";

    public Verdict Judge(in LineFacts facts)
        => facts.IdentityDoubts.Count == 0
            ? Verdict.NoObjection
            : Verdict.Withhold(LineState.Conflict, facts.IdentityDoubts, Steps.SettleIdentity(facts.Line), isPositiveDifference: true);
}
