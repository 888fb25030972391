using ToolLedger.Records;

namespace ToolLedger.Reconciliation.Rules;

/// <summary>Where the policy asks for a second person, a count by one alone can contradict but settles no line that needs it.</summary>
internal sealed class WitnessRule : IReconciliationRule
{
    public string Name => "witness";

    public string Version => "2";

    public string Settings => "";

    public Verdict Judge(in LineFacts facts)
    {
        return facts.Unwitnessed.Count > 0
            ? Verdict.Withhold(
                LineState.NotAssessed, facts.Unwitnessed, new NextStep(NextStepKind.CountItems, new Reason(PeopleReasons.StepSecondPerson)), isPositiveDifference: false)
            : Verdict.NoObjection;
    }
}
