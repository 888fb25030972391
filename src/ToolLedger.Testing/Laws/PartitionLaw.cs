using System;
using System.Globalization;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Reconciliation;

namespace ToolLedger.Testing.Laws;

/// <inheritdoc cref="ReconciliationLaw.Partition"/>
internal sealed class PartitionLaw : Law
{
    public override ReconciliationLaw Kind => ReconciliationLaw.Partition;

    public override LawAnswer Try(LawTrial trial)
    {
        ReconciliationResult result = trial.Result;
        ManifestLine[] answered = [.. result.Lines.Select(static line => line.Line).Concat(result.NotExpected.Select(static line => line.Line)).OrderBy(static line => line.Number)];
        if (!answered.SequenceEqual(trial.Manifest.Lines.OrderBy(static line => line.Number)))
        {
            return LawAnswer.Broken("the lines of the manifest, each once, expected or not", string.Join("; ", result.Lines));
        }

        int counted = Enum.GetValues<LineState>().Sum(result.Kit.CountOf);
        if (counted != result.Lines.Count || result.Kit.LineCount != counted)
        {
            return LawAnswer.Broken(Text(result.Lines.Count) + " lines over all states", Text(counted));
        }

        long delivered = trial.Case.Sessions.Where(session => session.Kits.Contains(trial.Case.Subject)).Sum(static session => (long)session.Reads.Count);
        long explained = Enum.GetValues<ReadExplanationKind>().Sum(result.CountOf);
        return delivered == explained ? LawAnswer.Holds : LawAnswer.Broken(Text(delivered) + " reads explained", Text(explained));
    }

    private static string Text(long number) => number.ToString(CultureInfo.InvariantCulture);
}
