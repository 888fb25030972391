namespace ToolLedger.Reconciliation.Rules;

/// <summary>
/// A tool whose identity is in doubt, and that was not sighted by its own mark since, is a conflict (trade rules: the mark wins, radio cannot see a swap). Where only a session says so
/// that cannot be used, nothing is shown of the tool either way: it is looked at before it is accounted for.
/// </summary>
internal sealed class IdentityRule : IReconciliationRule
{
    public string Name => "identity";

    public string Version => "2";

    public string Settings => "";

    public Verdict Judge(in LineFacts facts)
        => facts.IdentityDoubts.Count > 0 ? Verdict.Withhold(LineState.Conflict, facts.IdentityDoubts, Steps.SettleIdentity(facts.Line), isPositiveDifference: true)
            : facts.StandingDoubts.Count > 0 ? Verdict.Withhold(LineState.Weak, facts.StandingDoubts, Steps.SettleIdentity(facts.Line), isPositiveDifference: false)
            : Verdict.NoObjection;
}
