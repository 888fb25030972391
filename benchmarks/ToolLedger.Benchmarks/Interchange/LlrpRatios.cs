using System;
using System.Buffers;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using ToolLedger.Benchmarks.Reads;
using ToolLedger.Interchange.Llrp;
using ToolLedger.Reads;

namespace ToolLedger.Benchmarks.Interchange;

/// <summary>LLRP reports into reads against the least that can be done with the bytes: the exclusive or of all of them.</summary>
/// <remarks>The reads of <see cref="ReadCorpus"/>, clustered, with strengths in whole dBm, in messages of 32 reports: EPC-96, antenna, strength, first sighting.
/// With two layouts every other read also has a count and a last sighting.</remarks>
internal static class LlrpRatios
{
    private const int ReadCount = 1_000_000;
    private const int ReportsPerMessage = 32;
    private const int BatchLength = 128;

    internal static int Run()
    {
        TagRead[] reads = ReadCorpus.Make(ReadCount, isClustered: true);
        foreach (ref TagRead read in reads.AsSpan())
        {
            read = read with { Strength = new Rssi((short)(read.Strength!.Value.CentiDbm / 100 * 100)) };
        }

        Measure("LLRP reports -> reads, one layout", Write(reads));
        for (int i = 0; i < reads.Length; i += 2)
        {
            reads[i] = reads[i] with { Count = 3, LastSeen = reads[i].FirstSeen.AddMilliseconds(7) };
        }

        Measure("LLRP reports -> reads, two layouts in turn", Write(reads));
        return 0;
    }

    private static void Measure(string title, byte[] stream)
    {
        Console.WriteLine(FormattableString.Invariant($"{stream.Length / (double)ReadCount:F1} bytes a read"));
        var batch = new TagRead[BatchLength];
        var decoder = new LlrpDecoder();
        var builder = new LlrpReadBuilder();
        Ratios.Measure(
            title,
            ReadCount,
            12,
            60,
            ("exclusive or of the bytes", () => Xor(stream)),
            ("reads", () => Reads(stream, decoder, builder, batch, stream.Length)),
            ("reads, stream in 1,460 bytes", () => Reads(stream, decoder, builder, batch, 1_460)),
            ("reports, nothing taken out", () => Reports(stream, decoder)));
    }

    private static byte[] Write(TagRead[] reads)
    {
        var output = new ArrayBufferWriter<byte>(64 * reads.Length);
        var writer = new LlrpWriter(output);
        for (int i = 0; i < reads.Length; i += ReportsPerMessage)
        {
            writer.WriteReports(reads.AsSpan(i, Math.Min(ReportsPerMessage, reads.Length - i)));
        }

        return output.WrittenSpan.ToArray();
    }

    private static long Xor(byte[] stream)
    {
        Vector256<ulong> sum = default;
        Vector256<ulong> other = default;
        ReadOnlySpan<Vector256<ulong>> words = MemoryMarshal.Cast<byte, Vector256<ulong>>(stream);
        for (int i = 0; i + 1 < words.Length; i += 2)
        {
            sum ^= words[i];
            other ^= words[i + 1];
        }

        return (long)(sum ^ other)[0];
    }

    private static long Reads(byte[] stream, LlrpDecoder decoder, LlrpReadBuilder builder, TagRead[] batch, int pieceLength)
    {
        decoder.Reset();
        long count = 0;
        for (int at = 0; at < stream.Length; at += pieceLength)
        {
            ReadOnlySpan<byte> rest = stream.AsSpan(at, Math.Min(pieceLength, stream.Length - at));
            while (decoder.TryRead(ref rest, out LlrpMessage message))
            {
                LlrpReports reports = message.Reports;
                int made;
                do
                {
                    made = builder.Read(ref reports, ReadCorpus.Start, batch);
                    count += made;
                }
                while (made == batch.Length);
            }
        }

        return count == ReadCount ? count : throw new InvalidOperationException("Reads are lost.");
    }

    private static long Reports(byte[] stream, LlrpDecoder decoder)
    {
        decoder.Reset();
        long count = 0;
        ReadOnlySpan<byte> rest = stream;
        while (decoder.TryRead(ref rest, out LlrpMessage message))
        {
            LlrpReports reports = message.Reports;
            while (reports.TryRead(out LlrpTagReport report))
            {
                count += report.Fault is null ? 1 : 0;
            }
        }

        return count;
    }
}
