using System;
using System.Collections.Generic;
using ToolLedger.Interchange.Llrp;
using ToolLedger.Kits;
using ToolLedger.Reads;

namespace ToolLedger.Tests.Interchange.Llrp;

/// <summary>
/// What must hold for any bytes at all: nothing throws, however they are cut the stream says the same, and a session never stays valid behind a fault.
/// The first byte chooses the length of the pieces and how reads are made.
/// </summary>
internal static class AnyStream
{
    private static readonly DateTimeOffset Start = new(2026, 3, 1, 15, 55, 0, TimeSpan.Zero);

    internal static void Check(ReadOnlySpan<byte> input)
    {
        if (input.Length == 0)
        {
            return;
        }

        LlrpReadOptions options = OptionsOf(input[0]);
        byte[] stream = input[1..].ToArray();
        ReadSession whole = Play(stream, Math.Max(1, stream.Length), options, out (long Reads, long Faults, long Messages, ulong Sum) first);
        ReadSession pieces = Play(stream, 1 + (input[0] & 31), options, out (long Reads, long Faults, long Messages, ulong Sum) second);
        Must(first == second && whole.Digest == pieces.Digest, "cuts change the stream");
        Must(options.CarryOver != LlrpCarryOver.None || SumOfReads(stream, options, isQuick: true) == SumOfReads(stream, options, isQuick: false), "the quick way reads something else");
        Must(first.Faults == 0 || whole.Health.State != SessionState.Valid, "a fault leaves the session valid");
    }

    // A builder that has seen no report reads the first one by its parameters, and only a builder that has seen some knows layouts.
    private static ulong SumOfReads(byte[] stream, LlrpReadOptions options, bool isQuick)
    {
        var decoder = new LlrpDecoder(new LlrpDecoderOptions { MessageLengthMax = 4_096 });
        var builder = new LlrpReadBuilder(options);
        var batch = new TagRead[isQuick ? 5 : 1];
        ulong sum = 0;
        long faults = 0;
        ReadOnlySpan<byte> rest = stream;
        while (decoder.TryRead(ref rest, out LlrpMessage message))
        {
            LlrpReports reports = message.Reports;
            int count;
            do
            {
                builder = isQuick ? builder : new LlrpReadBuilder(options);
                count = builder.Read(ref reports, Start.AddSeconds(30), batch);
                faults += isQuick ? 0 : builder.FaultCount;
                foreach (TagRead read in batch.AsSpan(0, count))
                {
                    sum = (sum * 31) + SumOf(read);
                }
            }
            while (count == batch.Length);
        }

        return (sum * 31) + (ulong)(isQuick ? builder.FaultCount : faults);
    }

    private static ulong SumOf(in TagRead read)
    {
        read.Tag.Epc.TryGetWords(out ulong high, out ulong low);
        ulong sum = (high * 31) + low + (ulong)read.Tag.Epc.BitCount + read.Antenna.Number;
        sum = (sum * 31) + (ulong)read.FirstSeen.UtcTicks;
        sum = (sum * 31) + (ulong)read.LastSeen.UtcTicks;
        sum = (sum * 31) + (ulong)read.Count.GetValueOrDefault() + ((ulong)read.Tid.BitCount << 32);
        sum = (sum * 31) + (ulong)(read.Strength?.CentiDbm ?? short.MaxValue);
        Span<byte> tid = stackalloc byte[256];
        read.Tid.TryWriteBytes(tid, out int length);
        foreach (byte value in tid[..length])
        {
            sum = (sum * 31) + value;
        }

        return sum;
    }

    private static LlrpReadOptions OptionsOf(byte choice) => new()
    {
        TidOpSpecId = (choice & 32) != 0 ? 1 : null,
        ClockCheck = (choice & 64) != 0 ? new LlrpClockCheck(1_000_000, Start) : null,
        CarryOver = (choice & 128) != 0 ? LlrpCarryOver.AntennaId | LlrpCarryOver.FirstSeen : LlrpCarryOver.None,
    };

    private static ReadSession Play(byte[] stream, int pieceLength, LlrpReadOptions options, out (long Reads, long Faults, long Messages, ulong Sum) told)
    {
        var builder = new ReadSessionBuilder(NewPresentation(), new SessionPolicy());
        var decoder = new LlrpDecoder(new LlrpDecoderOptions { MessageLengthMax = 4_096 });
        var feed = new LlrpSessionFeed(builder, options);
        ulong sum = 0;
        long messages = 0;
        for (int at = 0; at < stream.Length; at += pieceLength)
        {
            ReadOnlySpan<byte> rest = stream.AsSpan(at, Math.Min(pieceLength, stream.Length - at));
            while (decoder.TryRead(ref rest, out LlrpMessage message))
            {
                messages++;
                sum = (sum * 31) + Sum(message);
                feed.Add(message, Start.AddSeconds(30));
            }
        }

        Must(decoder.Position == stream.Length, "bytes were left");
        decoder.End();
        feed.Finish(decoder, Start.AddSeconds(59));
        told = (feed.ReadCount, feed.FaultCount, messages, sum);
        return builder.Close(Start.AddSeconds(60), TimeSpan.Zero);
    }

    /// <summary>Looks at every value of a message.</summary>
    private static ulong Sum(LlrpMessage message)
    {
        ulong sum = (ulong)message.Offset + message.Id;
        LlrpReports reports = message.Reports;
        while (reports.TryRead(out LlrpTagReport report))
        {
            sum = (sum * 31) + (ulong)HashOf(report);
        }

        bool isRead = message.TryReadEvents(out IReadOnlyList<LlrpReaderEvent> events, out LlrpFault fault);
        Must(isRead == (fault.Rule == LlrpRule.None), "an answer without its fault");
        foreach (LlrpReaderEvent what in events)
        {
            sum = (sum * 31) + (ulong)what.Kind + what.AntennaId.GetValueOrDefault() + (ulong)(what.Message?.Length ?? 0);
        }

        isRead = message.TryReadStatus(out LlrpStatus? status, out fault);
        Must(isRead == (fault.Rule == LlrpRule.None), "a status without its fault");
        return sum + (ulong)(status?.Code ?? 0);
    }

    private static long HashOf(LlrpTagReport report)
    {
        long sum = report.Offset + report.Epc.BitCount + report.AntennaId.GetValueOrDefault() + report.PeakRssi.GetValueOrDefault();
        sum += (long)(report.FirstSeenUtcMicroseconds + report.LastSeenUtcMicroseconds + report.FirstSeenUptimeMicroseconds).GetValueOrDefault();
        sum += (report.TagSeenCount + report.ChannelIndex + report.SpecIndex + report.ProtocolControl + report.Crc + report.XpcW1 + report.XpcW2).GetValueOrDefault();
        foreach (LlrpParameter parameter in report.Parameters)
        {
            sum = (sum * 31) + parameter.Type + parameter.VendorId + parameter.CustomData.Length;
            if (report.Fault is null && parameter.TryReadAccessResult(out LlrpAccessResult result))
            {
                sum += result.OpSpecId + result.Words.Length + result.Result.GetValueOrDefault();
            }
        }

        Must(report.Fault is not null || report.HasTag, "neither a fault nor a tag");
        return sum;
    }

    private static Presentation NewPresentation() => new()
    {
        Id = new SessionId("S1"),
        Station = new ReadStation { Id = new StationId("R1"), Antennas = [new AntennaPort(1), new AntennaPort(2)] },
        Kits = [new KitId("K1")],
        From = Start,
        ReaderClockOffset = TimeSpan.Zero,
    };

    private static void Must(bool holds, string what)
    {
        if (!holds)
        {
            throw new InvalidOperationException(what);
        }
    }
}
