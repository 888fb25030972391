using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Reads;

namespace ToolLedger.Testing.Cases;

/// <summary>The facts of one read session, all in the open: what was presented where and when, and every read in the order of delivery.</summary>
/// <remarks>Change it with <c>with</c>. Lists are compared by reference. Immutable and thread-safe as long as nobody changes the lists it was given.</remarks>
public sealed record SessionCase
{
    /// <summary>The session's id.</summary>
    public required SessionId Id { get; init; }

    /// <summary>The station.</summary>
    public required ReadStation Station { get; init; }

    /// <summary>The kits presented; none is legal.</summary>
    public IReadOnlyList<KitId> Kits { get; init; } = [];

    /// <summary>The start, included.</summary>
    public required DateTimeOffset From { get; init; }

    /// <summary>The end, excluded.</summary>
    public required DateTimeOffset To { get; init; }

    /// <summary>The starts of the second and further passes, ascending.</summary>
    public IReadOnlyList<DateTimeOffset> PassStarts { get; init; } = [];

    /// <summary>How far the reader's clock is ahead, measured before the first read; null where nobody measured.</summary>
    /// <value>The default is zero: the clock is right.</value>
    public TimeSpan? ClockOffset { get; init; } = TimeSpan.Zero;

    /// <summary>The same, measured after the last read.</summary>
    /// <value>The default is zero: the clock is right.</value>
    public TimeSpan? ClockOffsetAfter { get; init; } = TimeSpan.Zero;

    /// <summary>What the reader reported to have lost.</summary>
    public IReadOnlyList<ReportedLoss> Losses { get; init; } = [];

    /// <summary>Kits that stood nearby, and when.</summary>
    public IReadOnlyList<NearbyKit> NearbyKits { get; init; } = [];

    /// <summary>What people changed around the station, and when.</summary>
    public IReadOnlyList<SurroundingsChange> SurroundingsChanges { get; init; } = [];

    /// <summary>The reads in the order of delivery, those of the control tags among them, stamped by the reader's clock.</summary>
    public IReadOnlyList<TagRead> Reads { get; init; } = [];

    /// <summary>The same session with reads of every control tag on each antenna that should hear it, so that the station proves itself.</summary>
    /// <param name="interval">Time between two reads on one antenna; at least 10 ms.</param>
    /// <returns>A session with more reads.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The interval is too short.</exception>
    public SessionCase WithControlReads(TimeSpan interval)
    {
        if (interval < TimeSpan.FromMilliseconds(10))
        {
            throw new ArgumentOutOfRangeException(nameof(interval), interval, "Control tags are read every 10 ms at most.");
        }

        var reads = new List<TagRead>(Reads);
        foreach (ControlTag control in Station.ControlTags)
        {
            foreach (AntennaPort antenna in control.Antenna.IsKnown ? [control.Antenna] : Station.Antennas)
            {
                for (DateTimeOffset at = From; at < To; at += interval)
                {
                    reads.Add(new TagRead(control.Tag, antenna, at + ClockOffset.GetValueOrDefault()));
                }
            }
        }

        return this with { Reads = reads };
    }

    /// <summary>The presentation sheet that a host would have written.</summary>
    /// <returns>A new presentation.</returns>
    public Presentation ToPresentation() => new()
    {
        Id = Id,
        Station = Station,
        Kits = Kits,
        From = From,
        Until = To,
        PassStarts = PassStarts,
        ReaderClockOffset = ClockOffset,
        Losses = Losses,
        NearbyKits = NearbyKits,
        SurroundingsChanges = SurroundingsChanges,
    };

    /// <summary>Delivers the reads and closes the session at its end.</summary>
    /// <param name="policy">When a session is usable.</param>
    /// <returns>The closed session.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="policy"/> is null.</exception>
    public ReadSession Close(SessionPolicy policy)
    {
        var builder = new ReadSessionBuilder(ToPresentation(), policy);
        foreach (TagRead read in Reads)
        {
            builder.Add(read);
        }

        return builder.Close(To, ClockOffsetAfter);
    }

    /// <summary>The facts in a few lines, the reads of a tag on an antenna in one of them.</summary>
    /// <returns>English text.</returns>
    public override string ToString()
    {
        var lines = new List<string>
        {
            string.Create(CultureInfo.InvariantCulture, $"session {Id} at {Station.Id} of {(Kits.Count == 0 ? "no kit" : string.Join(", ", Kits))}, {CaseText.Time(From)} to {CaseText.Time(To)}, clock {Offset(ClockOffset)} then {Offset(ClockOffsetAfter)}"),
        };
        lines.AddRange(PassStarts.Select(static start => "  next pass at " + CaseText.Time(start)));
        lines.AddRange(Losses.Select(static loss => $"  lost: {loss.Loss} on {loss.Antenna} at {CaseText.Time(loss.At)}"));
        lines.AddRange(NearbyKits.Select(static near => $"  kit {near.Kit} stood nearby from {CaseText.Time(near.From)} until {(near.Until is { } until ? CaseText.Time(until) : "the end")}"));
        lines.AddRange(SurroundingsChanges.Select(static change => $"  {change.By} changed the surroundings at {CaseText.Time(change.At)}: {change.What}"));
        lines.AddRange(Reads
            .GroupBy(static read => (read.Tag, Antenna: read.Antenna.Number, read.Tid))
            .Select(group => $"  {(Station.ControlTags.Any(control => control.Tag == group.Key.Tag) ? "control tag" : "tag")} {group.Key.Tag}"
                + (group.Key.Tid.IsEmpty ? "" : " chip " + group.Key.Tid)
                + string.Create(CultureInfo.InvariantCulture, $" on antenna {group.Key.Antenna}: ")
                + string.Join(", ", group.Select(read => Second(read.FirstSeen)))));
        return string.Join('\n', lines);
    }

    private string Second(DateTimeOffset at) => (at - From).TotalSeconds.ToString("0.###", CultureInfo.InvariantCulture) + " s";

    private static string Offset(TimeSpan? offset)
        => offset is { } known ? known.TotalSeconds.ToString("+0.###;-0.###;0", CultureInfo.InvariantCulture) + " s" : "unknown";
}
