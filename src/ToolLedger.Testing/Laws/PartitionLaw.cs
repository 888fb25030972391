using System;
using System.Globalization;
using System.Linq;
using ToolLedger.Reconciliation;

namespace ToolLedger.Testing.Laws;

/// <inheritdoc cref="ReconciliationLaw.Partition"/>
internal sealed class PartitionLaw : Law
{
    public override ReconciliationLaw Kind => ReconciliationLaw.Partition;

    public override LawAnswer Try(LawTrial trial)
    {
        ReconciliationResult result = trial.Result;
        // By number: where an alternate is in place, the line names another tool than the list.
        int[] answered = [.. result.Lines.Select(static line => line.Line.Number).Concat(result.NotExpected.Where(static line => line.Within.Count == 0).Select(static line => line.Line.Number)).Order()];
        if (!answered.SequenceEqual(trial.Manifest.Lines.Select(static line => line.Number).Order()))
        {
            return LawAnswer.Broken("the lines of the manifest, each once, expected or not", string.Join("; ", result.Lines));
        }

        int counted = Enum.GetValues<LineState>().Sum(result.Kit.CountOf);
        int all = result.AllLines.Count();
        if (counted != all || result.Kit.LineCount != counted)
        {
            return LawAnswer.Broken(Text(all) + " lines over all states", Text(counted));
        }

        long delivered = trial.Case.Sessions.Where(session => session.Kits.Contains(trial.Case.Subject)).Sum(static session => (long)session.Reads.Count);
        long explained = Enum.GetValues<ReadExplanationKind>().Sum(result.CountOf);
        return delivered == explained ? LawAnswer.Holds : LawAnswer.Broken(Text(delivered) + " reads explained", Text(explained));
    }

    private static string Text(long number) => number.ToString(CultureInfo.InvariantCulture);
}
