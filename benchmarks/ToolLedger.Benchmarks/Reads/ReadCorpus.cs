using System;
using System.Globalization;
using System.Text;
using ToolLedger.Identifiers;
using ToolLedger.Reads;
using ToolLedger.Tools;

namespace ToolLedger.Benchmarks.Reads;

/// <summary>
/// 1,000,000 tags in 50,000 kits of 20: tag i is a GIAI-96 of filter 0, partition 5, company prefix 0614141, asset
/// i * 7919 + 1. One read each 500 us from 1,700,000,000 s on; strength -70.00 to -35.01 dBm.
/// </summary>
/// <remarks>Clustered: four antennas, each at one random kit for 200 reads, its 20 tags drawn uniformly. Scattered: every
/// read draws one of all tags.</remarks>
public static class ReadCorpus
{
    public const int KitCount = 50_000;
    public const int TagsPerKit = 20;
    public const int TagCount = KitCount * TagsPerKit;
    private const long StartMicroseconds = 1_700_000_000_000_000;

    public static DateTimeOffset Start { get; } = DateTimeOffset.UnixEpoch.AddMicroseconds(StartMicroseconds);

    public static TagId Tag(int index)
    {
        UInt128 bits = ((UInt128)0x34 << 88) | ((UInt128)5 << 82) | ((UInt128)614_141 << 58) | (((ulong)index * 7_919) + 1);
        Span<byte> bytes = stackalloc byte[12];
        for (int i = 0; i < bytes.Length; i++)
        {
            bytes[i] = (byte)(bits >> (8 * (11 - i)));
        }

        return TagId.FromEpc(Epc.FromBytes(bytes, 96));
    }

    public static TagRead[] Make(int count, bool isClustered, ulong seed = 7)
    {
        var random = new SplitMix64(seed);
        var reads = new TagRead[count];
        var tags = new TagId[TagCount];
        for (int i = 0; i < tags.Length; i++)
        {
            tags[i] = Tag(i);
        }

        Span<int> kits = stackalloc int[4];
        Span<int> left = stackalloc int[4];
        kits.Clear();
        left.Clear();
        for (int i = 0; i < count; i++)
        {
            int antenna = i & 3;
            if (isClustered && left[antenna]-- == 0)
            {
                kits[antenna] = random.Below(KitCount);
                left[antenna] = 199;
            }

            int tag = isClustered ? (kits[antenna] * TagsPerKit) + random.Below(TagsPerKit) : random.Below(TagCount);
            reads[i] = new TagRead(tags[tag], new AntennaPort((byte)(antenna + 1)), Start.AddMicroseconds(i * 500L))
            {
                Strength = new Rssi((short)(-7_000 + random.Below(3_500))),
            };
        }

        return reads;
    }

    public static byte[] ToJsonLines(TagRead[] reads)
    {
        ArgumentNullException.ThrowIfNull(reads);
        var text = new StringBuilder(reads.Length * 100);
        foreach (TagRead read in reads)
        {
            text.Append(CultureInfo.InvariantCulture, $"{{\"epc\":\"{read.Tag.Epc}\",\"antenna\":{read.Antenna.Number},\"time\":\"{Time(read)}\",\"rssi\":{read.Strength!.Value.ToDbm():F2}}}\n");
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    public static byte[] ToCsv(TagRead[] reads)
    {
        ArgumentNullException.ThrowIfNull(reads);
        var text = new StringBuilder("epc,antenna,time,rssi\n", reads.Length * 64);
        foreach (TagRead read in reads)
        {
            text.Append(CultureInfo.InvariantCulture, $"{read.Tag.Epc},{read.Antenna.Number},{Time(read)},{read.Strength!.Value.ToDbm():F2}\n");
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static string Time(TagRead read) => read.FirstSeen.ToString("yyyy-MM-dd'T'HH:mm:ss.ffffff'Z'", CultureInfo.InvariantCulture);
}
