using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>Explains every read of the sessions that present a kit, by the stated precedence: repeat, outside window, expected, unexpected, unknown.</summary>
internal static class ReadExplainer
{
    private const int KitsNamed = 10;

    public static IReadOnlyList<ReadExplanation> Explain(ReconciliationScope scope, KitTree tree, IReadOnlyList<LineNotExpected> notExpected, IReadOnlyList<SessionSummary> sessions)
    {
        var list = new List<ReadExplanation>();
        var repeat = new Reason(ReconciliationReasons.ReadRepeat);
        HashSet<ToolId> removed = [.. notExpected.SelectMany(line => tree.ToolsOf(line.Line))];
        foreach (SessionSummary summary in sessions)
        {
            ReadSession session = summary.Session;
            Reason outside = WhyOutside(session);
            foreach (TagReading reading in scope.ReadingOf(session).Tags)
            {
                TagEvidence evidence = reading.Evidence;
                Add(list, session, reading, evidence.AcceptedCount, tree, removed, scope);
                AddPlain(list, session, reading, ReadExplanationKind.OutsideWindow, outside, evidence.OutsideCount);
                AddPlain(list, session, reading, ReadExplanationKind.Repeat, repeat, evidence.RepeatCount);
            }

            if (session.OverLimitCount > 0)
            {
                list.Add(new ReadExplanation
                {
                    Session = session.Id,
                    Tag = default,
                    Kind = ReadExplanationKind.Unknown,
                    Reason = new Reason(ReconciliationReasons.ReadOverTagLimit),
                    ReadCount = session.OverLimitCount,
                });
            }
        }

        return list;
    }

    /// <summary>A session counts its reads outside for each tag, and those on antennas of no station once: where both happened, the reason names both.</summary>
    private static Reason WhyOutside(ReadSession session)
    {
        if (session.UnlistedCount == 0)
        {
            return new Reason(ReconciliationReasons.ReadOutsideWindow);
        }

        bool isUnlistedOnly = session.UnlistedCount == session.OutsideCount;
        return new Reason(
            isUnlistedOnly ? ReconciliationReasons.ReadUnlistedAntenna : ReconciliationReasons.ReadOutsideOrUnlisted,
            ("antennas", string.Join(", ", session.UnlistedAntennas)));
    }

    private static string NamesOf(IReadOnlyList<KitId> kits)
    {
        string[] names = [.. kits.Select(static kit => kit.Value).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        return string.Join(", ", names.Take(KitsNamed)) + (names.Length > KitsNamed ? ", ..." : "");
    }

    private static void AddPlain(
        List<ReadExplanation> list, ReadSession session, TagReading reading, ReadExplanationKind kind, Reason reason, long count)
    {
        if (count > 0)
        {
            list.Add(new ReadExplanation
            {
                Session = session.Id,
                Tag = reading.Evidence.Tag,
                Kind = kind,
                Reason = reason,
                ReadCount = count,
                Tool = reading.Tool,
                Kit = reading.Kit,
            });
        }
    }

    private static void Add(
        List<ReadExplanation> list, ReadSession session, TagReading reading, long count, KitTree tree, HashSet<ToolId> removed, ReconciliationScope scope)
    {
        if (count > 0)
        {
            (ReadExplanationKind kind, Reason reason) = Explain(reading, tree, removed, scope);
            list.Add(new ReadExplanation
            {
                Session = session.Id,
                Tag = reading.Evidence.Tag,
                Kind = kind,
                Reason = reason,
                ReadCount = count,
                Tool = reading.Tool,
                Kit = reading.Kit,
            });
        }
    }

    private static (ReadExplanationKind Kind, Reason Reason) Explain(TagReading reading, KitTree tree, HashSet<ToolId> removed, ReconciliationScope scope)
    {
        switch (reading.Kind)
        {
            case TagReadingKind.ControlTag:
                return (ReadExplanationKind.Expected, new Reason(ReconciliationReasons.ReadControlTag));
            case TagReadingKind.Live when removed.Contains(reading.Tool!.Value):
                return (ReadExplanationKind.Unexpected, new Reason(PeopleReasons.ReadRemoved, ("tool", reading.Tool.Value.Value)));
            case TagReadingKind.Live when tree.FindLine(reading.Tool!.Value) is { } line:
                return (ReadExplanationKind.Expected, new Reason(
                    ReconciliationReasons.ReadExpected, ("tool", reading.Tool.Value.Value), ("line", line.Label)));
            case TagReadingKind.Live when tree.FindReplaced(reading.Tool!.Value) is { } replacedOn:
                return (ReadExplanationKind.Unexpected, new Reason(SealReasons.ReadReplaced, ("tool", reading.Tool.Value.Value), ("line", replacedOn)));
            case TagReadingKind.Live when reading.Kit is { } kit:
                return (ReadExplanationKind.Unexpected, new Reason(ReconciliationReasons.ReadOtherKit, ("tool", reading.Tool!.Value.Value), ("kit", kit.Value)));
            case TagReadingKind.Live when tree.FindAlternate(reading.Tool!.Value) is { } alternateOf:
                return (ReadExplanationKind.Unexpected, new Reason(ReconciliationReasons.ReadAlternate, ("tool", reading.Tool.Value.Value), ("line", alternateOf)));
            case TagReadingKind.Live when tree.Unresolved is [_, ..] unresolved:
                return (ReadExplanationKind.Unexpected, new Reason(
                    ReconciliationReasons.ReadUnlisted, ("tool", reading.Tool!.Value.Value), ("kits", NamesOf(unresolved))));
            case TagReadingKind.Live:
                return (ReadExplanationKind.Unexpected, new Reason(ReconciliationReasons.ReadSpare, ("tool", reading.Tool!.Value.Value)));
            case TagReadingKind.Retired:
                return (ReadExplanationKind.Unexpected, new Reason(
                    ReconciliationReasons.ReadRetired,
                    ("tool", reading.Tool!.Value.Value),
                    ("until", reading.Binding?.Until is { } until ? scope.Time(until) : "an unknown time")));
            case TagReadingKind.Reencoded:
                return (ReadExplanationKind.Unexpected, new Reason(ReconciliationReasons.ReadReencoded, ("tool", reading.Tool!.Value.Value)));
            default:
                return (ReadExplanationKind.Unknown, new Reason(ReconciliationReasons.ReadUnknown));
        }
    }
}
