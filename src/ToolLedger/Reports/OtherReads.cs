using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Reconciliation;

namespace ToolLedger.Reports;

/// <summary>What was read in a session and is not of the kits: one row an explanation, so that a cluster is one line and not one alarm a tag.</summary>
internal sealed class OtherReads(ReportVoice voice, SessionTally tally)
{
    private const int Shown = 10;

    private static readonly ReadExplanationKind[] Order =
        [ReadExplanationKind.Unexpected, ReadExplanationKind.Unknown, ReadExplanationKind.OutsideWindow, ReadExplanationKind.Repeat];

    internal IEnumerable<ReportRow> Rows()
    {
        foreach (ReadExplanationKind kind in Order)
        {
            List<ReadExplanation> reads = [.. tally.Others.Where(read => read.Kind == kind)];
            if (reads.Count > 0)
            {
                yield return new ReportRow("", Word(kind, reads), voice.Say(
                    ReportSentences.ReadsOf,
                    ("session", tally.Session.Id.Value),
                    ("tags", ReportVoice.Text(reads.Count)),
                    ("reads", ReportVoice.Text(tally.CountOf(kind))),
                    ("detail", Detail(kind, reads))));
            }
        }
    }

    /// <summary>A read on an antenna of no station is not out of time: it has a word of its own.</summary>
    private static string Word(ReadExplanationKind kind, List<ReadExplanation> reads) =>
        reads[0].Reason.Kind == ReconciliationReasons.ReadUnlistedAntenna ? StatusWords.UnlistedAntenna : StatusWords.Print(kind);

    private string Detail(ReadExplanationKind kind, List<ReadExplanation> reads) => kind switch
    {
        ReadExplanationKind.Unexpected => Unexpected(reads) + ".",
        ReadExplanationKind.Unknown => $"{voice.Say(reads[0].Reason)}: {Tags(reads)}.",
        _ => voice.Say(reads[0].Reason) + ".",
    };

    /// <summary>The findings about a cluster, then what no finding tells: spares and re-encoded tags.</summary>
    private string Unexpected(List<ReadExplanation> reads)
    {
        HashSet<Tools.TagId> told = [.. tally.Findings.SelectMany(static finding => finding.Tags)];
        List<ReadExplanation> rest = [.. reads.Where(read => !told.Contains(read.Tag))];
        IEnumerable<string> single = rest.Select(read => $"{Tag(read)}: {voice.Say(read.Reason)}");
        var parts = new List<string>(tally.Findings.Where(static finding => finding.Reason.Kind != ReconciliationReasons.NeighbourNearby).Select(finding => voice.Say(finding.Reason).TrimEnd('.')));
        if (rest.Count > 0)
        {
            parts.Add(voice.List(single, rest.Count, Shown));
        }

        return string.Join("; ", parts);
    }

    private string Tags(List<ReadExplanation> reads) => voice.List(reads.Select(Tag), reads.Count, Shown);

    private static string Tag(ReadExplanation read) => FormattableString.Invariant($"{read.Tag} ({read.ReadCount})");
}
