using System;
using System.Collections.Generic;
using System.Globalization;
using ToolLedger.Interchange.Llrp;
using ToolLedger.Reads;

namespace ToolLedger.Tests.Interchange.Llrp;

/// <summary>Everything that a stream says, one line for each message, report, parameter, read, event and fault, so that two ways of reading it can be compared.</summary>
internal static class Decoded
{
    private static readonly LlrpReadOptions Options = new() { TidOpSpecId = 7, ClockCheck = new LlrpClockCheck(0, DateTimeOffset.UnixEpoch.AddDays(20_000)) };

    /// <summary>Reads the stream in pieces of these lengths, over and over.</summary>
    internal static List<string> InPieces(byte[] stream, params int[] lengths)
    {
        var lines = new List<string>();
        var decoder = new LlrpDecoder(new LlrpDecoderOptions { MessageLengthMax = 1 << 20 });
        var reads = new LlrpReadBuilder(Options, fault => lines.Add("no read: " + fault));
        for (int at = 0, piece = 0; at < stream.Length; piece++)
        {
            int length = Math.Min(lengths[piece % lengths.Length], stream.Length - at);

            // A copy that is spoiled afterwards: nothing may be kept that refers to it.
            byte[] copy = stream.AsSpan(at, length).ToArray();
            ReadOnlySpan<byte> rest = copy;
            while (decoder.TryRead(ref rest, out LlrpMessage message))
            {
                Add(message, reads, lines);
            }

            Array.Fill(copy, (byte)0xEE);
            at += length;
        }

        lines.Add($"end: {decoder.End()?.ToString() ?? "at a border"}");
        return lines;
    }

    private static void Add(LlrpMessage message, LlrpReadBuilder reads, List<string> lines)
    {
        lines.Add(string.Create(CultureInfo.InvariantCulture, $"{message.Offset}: {message.Version} {(int)message.Type} {message.Id} {message.Body.Length}"));
        LlrpReports reports = message.Reports;
        while (reports.TryRead(out LlrpTagReport report))
        {
            lines.Add(Line(report));
        }

        LlrpReports again = message.Reports;
        var batch = new TagRead[3];
        int count;
        do
        {
            count = reads.Read(ref again, SceneTime, batch);
            for (int i = 0; i < count; i++)
            {
                lines.Add(Line(batch[i]));
            }
        }
        while (count == batch.Length);
        bool isWhole = message.TryReadEvents(out IReadOnlyList<LlrpReaderEvent> events, out LlrpFault fault);
        lines.AddRange([.. Array.ConvertAll([.. events], what => what.ToString()), isWhole ? "" : fault.ToString()]);
        lines.Add(message.TryReadStatus(out LlrpStatus? status, out fault) ? status.ToString() : fault.ToString());
    }

    internal static DateTimeOffset SceneTime { get; } = new(2026, 3, 1, 15, 55, 30, TimeSpan.Zero);

    internal static string Line(in TagRead read) => string.Create(
        CultureInfo.InvariantCulture,
        $"read {read.Tag} {read.Antenna} {read.FirstSeen:O} {read.LastSeen:O} {read.Strength} {read.Count} {read.Tid}");

    private static string Line(LlrpTagReport report)
    {
        string line = string.Create(
            CultureInfo.InvariantCulture,
            $"tag {report.Offset} {report.HasTag} {report.Epc.BitCount}:{report.Epc} {report.AntennaId} {report.PeakRssi} {report.ChannelIndex} {report.FirstSeenUtcMicroseconds} {report.FirstSeenUptimeMicroseconds} {report.LastSeenUtcMicroseconds} {report.LastSeenUptimeMicroseconds} {report.TagSeenCount} {report.RoSpecId} {report.SpecIndex} {report.InventoryParameterSpecId} {report.AccessSpecId} {report.ProtocolControl} {report.Crc} {report.XpcW1} {report.XpcW2} {report.Fault}");
        foreach (LlrpParameter parameter in report.Parameters)
        {
            line += string.Create(CultureInfo.InvariantCulture, $" | {parameter.Type} {parameter.VendorId} {parameter.Subtype} {Convert.ToHexString(parameter.CustomData)}");
            if (report.Fault is null && parameter.TryReadAccessResult(out LlrpAccessResult result))
            {
                line += string.Create(CultureInfo.InvariantCulture, $" {result.Type} {result.Result} {result.OpSpecId} {result.WordsWritten} {Convert.ToHexString(result.Words)}");
            }
        }

        return line;
    }
}
