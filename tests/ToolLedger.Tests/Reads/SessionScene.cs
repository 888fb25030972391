using System;
using System.Collections.Generic;
using ToolLedger.Identifiers;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Tools;

namespace ToolLedger.Tests.Reads;

/// <summary>Station R1 with antennas 1 and 2 and control tag C1 on both, as in the conventions of the scenarios; times are
/// seconds after the start.</summary>
internal sealed class SessionScene
{
    internal static readonly DateTimeOffset Start = new(2026, 3, 1, 15, 55, 0, TimeSpan.Zero);

    internal static readonly TagId C1 = TagId.FromEpc(Epc.Parse("C00000000000000000000001"));

    internal static readonly ReadStation R1 = new()
    {
        Id = new StationId("R1"),
        Antennas = [new AntennaPort(1), new AntennaPort(2)],
        ControlTags = [new ControlTag(C1)],
    };

    internal SessionPolicy Policy { get; init; } = new();

    internal ReadStation Station { get; init; } = R1;

    internal double Seconds { get; init; } = 60;

    internal TimeSpan? OffsetBefore { get; init; } = TimeSpan.Zero;

    internal TimeSpan? OffsetAfter { get; init; } = TimeSpan.Zero;

    internal double[] PassStarts { get; init; } = [];

    internal List<TagRead> Reads { get; } = [];

    internal List<ReportedLoss> Losses { get; } = [];

    internal static TagId Tool(int number) => TagId.FromEpc(Epc.Parse($"3034257BF7194E40000000{number:X2}"));

    internal static DateTimeOffset At(double seconds) => Start.AddTicks((long)(seconds * TimeSpan.TicksPerSecond));

    internal static TagRead Read(TagId tag, int antenna, double seconds) => new(tag, new AntennaPort((byte)antenna), At(seconds));

    /// <summary>C1 answers every second on an antenna.</summary>
    internal SessionScene WithControl(int antenna, double from = 1, double to = 59, TagId? tag = null)
    {
        for (double second = from; second <= to; second++)
        {
            Reads.Add(Read(tag ?? C1, antenna, second));
        }

        return this;
    }

    /// <summary>C1 answers throughout on both antennas.</summary>
    internal SessionScene WithControls() => WithControl(1).WithControl(2);

    internal SessionScene With(TagId tag, int antenna, params double[] seconds)
    {
        foreach (double second in seconds)
        {
            Reads.Add(Read(tag, antenna, second));
        }

        return this;
    }

    internal SessionScene WithLoss(SessionLoss loss, int antenna = 0)
    {
        Losses.Add(new ReportedLoss(loss, At(30), antenna == 0 ? default : new AntennaPort((byte)antenna)));
        return this;
    }

    internal Presentation Presentation => new()
    {
        Id = new SessionId("S1"),
        Station = Station,
        Kits = [new KitId("K1")],
        From = Start,
        PassStarts = [.. Array.ConvertAll(PassStarts, At)],
        ReaderClockOffset = OffsetBefore,
    };

    internal ReadSession Close()
    {
        var builder = new ReadSessionBuilder(Presentation, Policy);
        foreach (TagRead read in Reads)
        {
            builder.Add(read);
        }

        foreach (ReportedLoss loss in Losses)
        {
            builder.ReportLoss(loss.Loss, loss.At, loss.Antenna);
        }

        return builder.Close(At(Seconds), OffsetAfter);
    }
}
