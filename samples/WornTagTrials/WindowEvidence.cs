using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Tools;

namespace WornTagTrials;

/// <summary>Cuts the trials into windows and makes of each what a presence policy is asked with.</summary>
internal static class WindowEvidence
{
    /// <summary>The file names no tag: this is ours.</summary>
    public static readonly TagId Tag = TagId.FromText("worn-tag");

    /// <summary>The file gives times from the start of each trial and no date: trial n starts n days after this, which is ours.</summary>
    public static readonly DateTimeOffset FirstStart = new(2016, 1, 1, 0, 0, 0, TimeSpan.Zero);

    private static readonly ReadStation Room = new()
    {
        Id = new StationId("room-1"),
        Antennas = [new AntennaPort(1), new AntennaPort(2), new AntennaPort(3), new AntennaPort(4)],
    };

    /// <summary>Yields the evidence of every whole window of every trial, also of windows without a read.</summary>
    public static IEnumerable<PresenceEvidence> Windows(IEnumerable<TrialRow> rows, TimeSpan length, SessionPolicy policy)
    {
        int trial = 0;
        foreach (IGrouping<string, TrialRow> group in rows.GroupBy(row => row.Trial, StringComparer.Ordinal))
        {
            DateTimeOffset start = FirstStart.AddDays(trial++);
            TrialRow[] all = [.. group];
            long count = all.Max(row => row.Time).Ticks / length.Ticks;
            ILookup<long, TrialRow> byWindow = all.ToLookup(row => row.Time.Ticks / length.Ticks);
            for (long window = 0; window < count; window++)
            {
                yield return Evidence(group.Key, window, start, length, byWindow[window], policy);
            }
        }
    }

    private static PresenceEvidence Evidence(
        string trial, long window, DateTimeOffset start, TimeSpan length, IEnumerable<TrialRow> rows, SessionPolicy policy)
    {
        var presentation = new Presentation
        {
            Id = new SessionId(string.Create(CultureInfo.InvariantCulture, $"{trial}-{window + 1}")),
            Station = Room,
            Kits = [],
            From = start + (length * window),
            Until = start + (length * (window + 1)),
            ReaderClockOffset = TimeSpan.Zero,
        };
        var builder = new ReadSessionBuilder(presentation, policy);
        foreach (TrialRow row in rows)
        {
            builder.Add(new TagRead(Tag, row.Antenna, start + row.Time) { Strength = row.Strength });
        }

        // No control tag, so the session's health says nothing: the policy is asked directly, with the looks alone.
        ReadSession session = builder.Close(presentation.Until.Value, TimeSpan.Zero);
        TagEvidence? seen = session.Find(Tag);
        return new PresenceEvidence
        {
            Tag = Tag,
            Passes = seen is null ? [] : [new PassEvidence(session.Id, 1, IsDegraded: false, seen.LookCount, session.Passes[0].LookLimit)],
            Antennas = [.. (seen?.Cells ?? []).Select(cell => new AntennaEvidence(Room.Id, cell.Antenna, IsDegraded: false, cell.LookCount))],
            Strongest = seen?.Strongest,
        };
    }
}
