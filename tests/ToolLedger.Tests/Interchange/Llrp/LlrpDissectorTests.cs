using System;
using System.Buffers;
using System.Buffers.Binary;
using System.Collections.Generic;
using System.Diagnostics;
using System.IO;
using System.Linq;
using System.Threading.Tasks;
using System.Xml.Linq;
using ToolLedger.Identifiers;
using ToolLedger.Interchange.Llrp;
using ToolLedger.Tests.Reads;
using Xunit;

namespace ToolLedger.Tests.Interchange.Llrp;

/// <summary>A second decoder, of another author, reads the same from the published reports and from those of the writer. Skipped where it is not installed.</summary>
[Trait("Category", "CrossCheck")]
public sealed class LlrpDissectorTests
{
    [Fact]
    public async Task The_dissector_of_tshark_reads_the_same_tags()
    {
        string? tshark = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
            .Select(folder => Path.Combine(folder, "tshark")).FirstOrDefault(File.Exists);
        Assert.SkipWhen(tshark is null, "tshark is not installed: the cross-check with a second decoder was not made.");
        var written = new ArrayBufferWriter<byte>();
        new LlrpWriter(written).WriteReports([.. new SessionScene().WithControls().Reads.Select(read => read with { LastSeen = read.FirstSeen.AddSeconds(1), Count = 9 })]);
        byte[][] frames = [.. LlrpVector.Published.Where(vector => vector.Tags.Length > 0).Select(vector => vector.Bytes), written.WrittenSpan.ToArray()];

        string[] theirs = await DissectAsync(tshark, frames);

        Assert.Equal(frames.Select(Ours), theirs);
    }

    private static string Ours(byte[] frame)
    {
        ReadOnlySpan<byte> rest = frame;
        Assert.True(new LlrpDecoder().TryRead(ref rest, out LlrpMessage message));
        var values = new List<string>();
        LlrpReports reports = message.Reports;
        while (reports.TryRead(out LlrpTagReport report))
        {
            values.Add(Line(
                report.Epc, report.AntennaId, report.PeakRssi, report.TagSeenCount, report.ChannelIndex, report.FirstSeenUtcMicroseconds,
                report.FirstSeenUptimeMicroseconds, report.LastSeenUtcMicroseconds, report.LastSeenUptimeMicroseconds));
        }

        return string.Join(';', values);
    }

    private static async Task<string[]> DissectAsync(string tshark, byte[][] frames)
    {
        string file = Path.GetTempFileName();
        try
        {
            await File.WriteAllBytesAsync(file, Capture(frames), TestContext.Current.CancellationToken);
            var start = new ProcessStartInfo(tshark, ["-r", file, "-d", "tcp.port==5084,llrp", "-T", "pdml"])
            {
                UseShellExecute = false,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            };
            using Process process = Process.Start(start)!;
            Task<string> errors = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
            XDocument document = await XDocument.LoadAsync(process.StandardOutput.BaseStream, LoadOptions.None, TestContext.Current.CancellationToken);
            await process.WaitForExitAsync(TestContext.Current.CancellationToken);
            Assert.True(process.ExitCode == 0, await errors);
            return [.. document.Descendants("packet").Select(Theirs)];
        }
        finally
        {
            File.Delete(file);
        }
    }

    private static string Theirs(XElement packet) => string.Join(';', packet.Descendants("field").Where(field => TypeOf(field) == 240).Select(Tag));

    private static string Tag(XElement report)
    {
        XElement? Child(int type) => report.Elements("field").FirstOrDefault(field => TypeOf(field) == type);

        // Strength is shown without a sign there, so it is given one.
        XElement epc = Child(13) ?? Child(241)!;
        string hex = Of(epc, "llrp.param.epc") ?? "";
        int bits = Of(epc, "llrp.param.length_bits") is { } count ? Number(count) : 96;
        int? rssi = Child(6) is { } strength ? (sbyte)Number(Of(strength, "llrp.param.peak_rssi")!) : null;
        return Line(
            Epc.FromBytes(Convert.FromHexString(hex), bits), Number(Child(1), "llrp.antenna_id"), rssi, Number(Child(8), "llrp.param.tag_count"),
            Number(Child(7), "llrp.param.channel_idx"), Micros(Child(2)), Micros(Child(3)), Micros(Child(4)), Micros(Child(5)));
    }

    private static string Line(Epc epc, int? antenna, int? rssi, int? count, int? channel, params ulong?[] times) =>
        FormattableString.Invariant($"{epc} {antenna} {rssi} {count} {channel} {string.Join(' ', times)}");

    private static int TypeOf(XElement parameter) => parameter.Elements("field").FirstOrDefault(field => Name(field) is "llrp.tlv_type" or "llrp.tv_type") is { } type
        ? Number(type.Attribute("value")!.Value)
        : 0;

    private static string? Of(XElement parameter, string name) => parameter.Elements("field").FirstOrDefault(field => Name(field) == name)?.Attribute("value")?.Value;

    private static int? Number(XElement? parameter, string name) => parameter is not null && Of(parameter, name) is { } hex ? Number(hex) : null;

    private static ulong? Micros(XElement? parameter) =>
        parameter is not null && Of(parameter, "llrp.param.microseconds") is { } hex ? Convert.ToUInt64(hex, 16) : null;

    private static int Number(string hex) => Convert.ToInt32(hex, 16);

    private static string Name(XElement field) => field.Attribute("name")?.Value ?? "";

    /// <summary>A capture file of raw IPv4 packets: a TCP segment from port 5084 for each frame. Source: from memory, checked by the reader of the file.</summary>
    private static byte[] Capture(byte[][] frames)
    {
        var all = new List<byte>(Convert.FromHexString("D4C3B2A1020004000000000000000000FFFF040065000000"));
        uint sequence = 1;
        foreach (byte[] frame in frames)
        {
            byte[] packet = new byte[40 + frame.Length];
            packet[0] = 0x45;
            BinaryPrimitives.WriteUInt16BigEndian(packet.AsSpan(2), (ushort)packet.Length);
            packet[8] = 64;
            packet[9] = 6;
            (packet[12], packet[15], packet[16], packet[19]) = (127, 1, 127, 2);
            BinaryPrimitives.WriteUInt16BigEndian(packet.AsSpan(20), 5_084);
            BinaryPrimitives.WriteUInt16BigEndian(packet.AsSpan(22), 40_000);
            BinaryPrimitives.WriteUInt32BigEndian(packet.AsSpan(24), sequence);
            (packet[32], packet[33]) = (0x50, 0x18);
            frame.CopyTo(packet, 40);
            sequence += (uint)frame.Length;
            byte[] head = new byte[16];
            BinaryPrimitives.WriteInt32LittleEndian(head.AsSpan(8), packet.Length);
            BinaryPrimitives.WriteInt32LittleEndian(head.AsSpan(12), packet.Length);
            all.AddRange([.. head, .. packet]);
        }

        return [.. all];
    }
}
