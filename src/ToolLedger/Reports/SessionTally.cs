using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>A read session as a report shows it: what its reads are, seen from all the kits of the report that were presented in it.</summary>
/// <remarks>A tag of another kit of the report, or of a kit inside one, is expected where that kit was presented in the same session, however the single results call it.</remarks>
internal sealed class SessionTally
{
    private readonly Dictionary<ReadExplanationKind, long> counts = [];

    private SessionTally(SessionSummary summary, ReconciliationResult seenFrom, ILookup<KitId, KitId> reported)
    {
        Session = summary.Session;
        var others = new List<ReadExplanation>();
        foreach (ReadExplanation read in seenFrom.Reads)
        {
            if (read.Session == Session.Id)
            {
                bool isOwn = read.Kind == ReadExplanationKind.Unexpected && read.Reason.Kind == ReconciliationReasons.ReadOtherKit
                    && read.Kit is { } kit && reported[kit].Any(Session.Presents);
                ReadExplanationKind shown = isOwn ? ReadExplanationKind.Expected : read.Kind;
                counts[shown] = CountOf(shown) + read.ReadCount;
                if (shown != ReadExplanationKind.Expected)
                {
                    others.Add(read);
                }
            }
        }

        Others = others;
        Findings = [.. seenFrom.Findings.Where(finding => finding.Level == FindingLevel.Session && finding.Session == Session.Id && !finding.Reason.Equals(summary.LeftOut))];
    }

    internal ReadSession Session { get; }

    /// <summary>Every explanation but the expected ones.</summary>
    internal IReadOnlyList<ReadExplanation> Others { get; }

    /// <summary>What the reads of the session show beside the kits: a kit passing, tools of another kit, retired tags.</summary>
    internal IReadOnlyList<Finding> Findings { get; }

    internal long CountOf(ReadExplanationKind kind) => counts.GetValueOrDefault(kind);

    /// <summary>The kit and every kit inside it.</summary>
    private static IEnumerable<KitId> KitsOf(ReconciliationResult result) =>
        result.AllLines.Select(static line => line.Line).OfType<SubKitLine>().Select(static line => line.Kit).Prepend(result.Manifest.Id);

    /// <summary>Every session of the results once, in time order.</summary>
    internal static List<SessionTally> Of(IReadOnlyList<ReconciliationResult> results)
    {
        ILookup<KitId, KitId> reported = results
            .SelectMany(static result => KitsOf(result).Select(kit => (Kit: kit, Outer: result.Manifest.Id)))
            .ToLookup(static pair => pair.Kit, static pair => pair.Outer);
        var seen = new HashSet<(SessionId Id, Digest Digest)>();
        var tallies = new List<SessionTally>();
        foreach (ReconciliationResult result in results)
        {
            foreach (SessionSummary summary in result.Sessions)
            {
                if (seen.Add((summary.Session.Id, summary.Session.Digest)))
                {
                    tallies.Add(new SessionTally(summary, result, reported));
                }
            }
        }

        return [.. tallies.OrderBy(static tally => tally.Session.From).ThenBy(static tally => tally.Session.Id.Value, StringComparer.Ordinal)];
    }
}
