using System.Globalization;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation.Rules;

/// <summary>A count below the expected one is partial, one above it a conflict; a set whose container is shown but whose contents nobody counted is partial by silence. What jobs used is left to the balance.</summary>
internal sealed class CountRule : IReconciliationRule
{
    public string Name => "count";

    public string Version => "2";

    public string Settings => "";

    public Verdict Judge(in LineFacts facts)
    {
        if (facts.Balance is { JobCount: > 0 })
        {
            return Verdict.NoObjection;
        }

        if (facts.Counted is { } counted)
        {
            return Compare(facts.Line, facts.Expected, counted);
        }

        // A seal that is accepted stands for what is in the container too.
        return facts.Line is SetLine set && facts.Bases.Count > 0 && facts.Seal is null
            ? Verdict.Withhold(LineState.Partial, new Reason(ReconciliationReasons.ContainerOnly, ("total", facts.Expected.ToString())), Steps.CountItems(set))
            : Verdict.NoObjection;
    }

    private static Verdict Compare(ManifestLine line, Quantity expected, Quantity counted)
    {
        if (counted.Amount < expected.Amount)
        {
            return Verdict.Withhold(
                LineState.Partial,
                [new Reason(ReconciliationReasons.CountShort, ("short", Text(expected.Amount - counted.Amount)), ("expected", expected.ToString()))],
                Steps.SearchShortage(line),
                isPositiveDifference: true);
        }

        return counted.Amount > expected.Amount
            ? Verdict.Withhold(
                LineState.Conflict,
                [new Reason(ReconciliationReasons.Surplus, ("over", Text(counted.Amount - expected.Amount)), ("expected", expected.ToString()))],
                Steps.ResolveSurplus(line),
                isPositiveDifference: true)
            : Verdict.NoObjection;
    }

    private static string Text(decimal amount) => amount.ToString("0.###", CultureInfo.InvariantCulture);
}
