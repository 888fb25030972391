using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Text;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Benchmarks.Reconciliation;

/// <summary>
/// A site of 50,000 kits with 20 tagged tools each, and reads of it. Tag i is a GIAI-96: filter 0, partition 5, company prefix 0614141, asset
/// i * 7919 + 1. Four antennas; on each, a random kit is read 200 times, its tags drawn uniformly, then the next one; one read each
/// 500 us from 1,700,000,000 s; strength -70 dBm + [0, 35) dB. SplitMix64 with a fixed seed is the only source of chance.
/// </summary>
internal static class SiteCorpus
{
    public const int KitCount = 50_000;
    public const int ToolsPerKit = 20;

    public static readonly DateTimeOffset Start = DateTimeOffset.FromUnixTimeSeconds(1_700_000_000);
    public static readonly TimeSpan Window = TimeSpan.FromSeconds(600);
    public static readonly TagId ControlTag = TagOf(-1);

    public static KitId KitOf(int kit) => new(string.Create(CultureInfo.InvariantCulture, $"K{kit}"));

    public static KitRegister Kits(int kitCount)
    {
        var signature = new Signature { By = new PersonId("P-1"), At = Start.AddDays(-1) };
        var manifests = new List<KitManifest>(kitCount);
        for (int kit = 0; kit < kitCount; kit++)
        {
            var lines = new List<ManifestLine>(ToolsPerKit);
            for (int i = 0; i < ToolsPerKit; i++)
            {
                lines.Add(new ToolLine { Number = i + 1, Tool = new Tool { Id = ToolOf((kit * ToolsPerKit) + i), Description = "Tool" } });
            }

            manifests.Add(new KitManifest(KitOf(kit), 1, "Kit", Start.AddDays(-1), signature, lines));
        }

        return new KitRegister(manifests);
    }

    public static TagRegister Tags(int kitCount)
    {
        var bindings = new List<TagBinding>(kitCount * ToolsPerKit);
        for (int i = 0; i < kitCount * ToolsPerKit; i++)
        {
            bindings.Add(new TagBinding { Tag = TagOf(i), Tool = ToolOf(i), From = Start.AddDays(-1) });
        }

        return new TagRegister(bindings);
    }

    public static Presentation Presentation(int kitCount)
    {
        var kits = new KitId[kitCount];
        for (int kit = 0; kit < kitCount; kit++)
        {
            kits[kit] = KitOf(kit);
        }

        return new Presentation
        {
            Id = new SessionId("S-1"),
            Station = new ReadStation
            {
                Id = new StationId("R-1"),
                Antennas = [new AntennaPort(1), new AntennaPort(2), new AntennaPort(3), new AntennaPort(4)],
                ControlTags = [new ControlTag(ControlTag)],
            },
            Kits = kits,
            From = Start,
            Until = Start + Window,
            ReaderClockOffset = TimeSpan.Zero,
            ReaderClockOffsetAfter = TimeSpan.Zero,
        };
    }

    /// <summary>The reads as JSON Lines, with one read of the control tag on each antenna at both ends of the window.</summary>
    public static byte[] JsonLines(int readCount, ulong seed = 7)
    {
        string[] epcs = new string[KitCount * ToolsPerKit];
        for (int i = 0; i < epcs.Length; i++)
        {
            epcs[i] = HexOf(i);
        }

        using var stream = new MemoryStream(capacity: (readCount + 8) * 100);
        using var text = new StreamWriter(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false)) { NewLine = "\n" };
        WriteControlTag(text, Start.AddSeconds(1));
        int[] kit = new int[4];
        int[] left = new int[4];
        ulong state = seed;
        for (int i = 0; i < readCount; i++)
        {
            int antenna = i & 3;
            if (left[antenna]-- == 0)
            {
                kit[antenna] = Below(ref state, KitCount);
                left[antenna] = 199;
            }

            int tag = (kit[antenna] * ToolsPerKit) + Below(ref state, ToolsPerKit);
            Write(text, epcs[tag], antenna + 1, Start.AddTicks(i * 5_000L), (-7000 + Below(ref state, 3500)) / 100.0);
        }

        WriteControlTag(text, Start + Window - TimeSpan.FromSeconds(1));
        text.Flush();
        return stream.ToArray();
    }

    private static void WriteControlTag(StreamWriter text, DateTimeOffset at)
    {
        for (int antenna = 1; antenna <= 4; antenna++)
        {
            Write(text, HexOf(-1), antenna, at, -50);
        }
    }

    private static void Write(StreamWriter text, string epc, int antenna, DateTimeOffset at, double dbm) =>
        text.Write(string.Create(CultureInfo.InvariantCulture,
            $$"""{"epc":"{{epc}}","antenna":{{antenna}},"time":"{{at.UtcDateTime:yyyy-MM-dd'T'HH:mm:ss.ffffff'Z'}}","rssi":{{dbm:0.00}}}""" + "\n"));

    private static ToolId ToolOf(int i) => new(string.Create(CultureInfo.InvariantCulture, $"T{i}"));

    private static TagId TagOf(int i) => TagId.Parse(HexOf(i));

    private static string HexOf(int i) =>
        (((UInt128)0x34 << 88) | ((UInt128)5 << 82) | ((UInt128)614141 << 58) | (i < 0 ? 7_920_000_001UL : ((ulong)i * 7919) + 1)).ToString("X24", CultureInfo.InvariantCulture);

    private static int Below(ref ulong state, int bound)
    {
        ulong z = state += 0x9E3779B97F4A7C15UL;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return (int)(((UInt128)(z ^ (z >> 31)) * (ulong)bound) >> 64);
    }
}
