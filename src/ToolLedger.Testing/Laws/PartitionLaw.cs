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
        if (!result.Lines.Select(static line => line.Line).SequenceEqual(trial.Manifest.Lines))
        {
            return LawAnswer.Broken("the lines of the manifest in its order, each once", string.Join("; ", result.Lines));
        }

        int counted = Enum.GetValues<LineState>().Sum(result.Kit.CountOf);
        if (counted != trial.Manifest.Lines.Count || result.Kit.LineCount != counted)
        {
            return LawAnswer.Broken(Text(trial.Manifest.Lines.Count) + " lines over all states", Text(counted));
        }

        long delivered = trial.Case.Sessions.Where(session => session.Kits.Contains(trial.Case.Subject)).Sum(static session => (long)session.Reads.Count);
        long explained = Enum.GetValues<ReadExplanationKind>().Sum(result.CountOf);
        return delivered == explained ? LawAnswer.Holds : LawAnswer.Broken(Text(delivered) + " reads explained", Text(explained));
    }

    private static string Text(long number) => number.ToString(CultureInfo.InvariantCulture);
}
