using System.Globalization;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation.Rules;

/// <summary>A consumable of which jobs used some is settled when issued = used + returned + scrapped; short is partial, over a conflict.</summary>
internal sealed class BalanceRule : IReconciliationRule
{
    public string Name => "balance";

    public string Version => "1";

    public string Settings => "";

    public Verdict Judge(in LineFacts facts)
    {
        if (facts.Balance is not { JobCount: > 0 } balance || balance.Unexplained == 0)
        {
            return Verdict.NoObjection;
        }

        string unit = balance.Unit.Value;
        if (balance.Unexplained > 0)
        {
            string missing = Text(balance.Unexplained);
            var step = new Reason(PeopleReasons.StepBalance, ("short", missing), ("unit", unit), ("what", facts.Line.Description));
            return Verdict.Withhold(
                LineState.Partial,
                [new Reason(PeopleReasons.BalanceShort, ("short", missing), ("unit", unit))],
                new NextStep(NextStepKind.SearchShortage, step),
                isPositiveDifference: true);
        }

        return Verdict.Withhold(
            LineState.Conflict,
            [new Reason(PeopleReasons.BalanceOver, ("over", Text(-balance.Unexplained)), ("unit", unit))],
            Steps.ResolveSurplus(facts.Line),
            isPositiveDifference: true);
    }

    private static string Text(decimal amount) => amount.ToString("0.###", CultureInfo.InvariantCulture);
}
