using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;

namespace ToolLedger.Benchmarks.Identifiers;

/// <summary>
/// 100,000 valid EPCs of mixed schemes as hexadecimal text and tag URIs, made by plain slow code that shares nothing with the
/// code measured: a list of bits. Seeded, so that figures can be compared.
/// </summary>
internal sealed class EpcCorpus
{
    private const string Alphanumeric = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789";
    private const string Cage = "0123456789ABCDEFGHJKLMNPQRSTUVWXYZ";
    private static readonly int[] PrefixBits = [40, 37, 34, 30, 27, 24, 20];
    private static readonly ulong[] PowersOfTen = Enumerable.Range(0, 20).Select(i => Enumerable.Range(0, i).Aggregate(1UL, (a, _) => a * 10)).ToArray();

    private readonly SplitMix64 _draw;

    internal EpcCorpus(int count = 100_000, ulong seed = 20261124)
    {
        _draw = new SplitMix64(seed);
        Hex = new string[count];
        TagUri = new string[count];
        for (int i = 0; i < count; i++)
        {
            int pick = _draw.Below(100);
            (Hex[i], TagUri[i]) = pick < 40 ? Sgtin(false) : pick < 60 ? Giai() : pick < 75 ? Grai() : pick < 90 ? Sgtin(true) : Adi();
        }
    }

    /// <summary>Padded to whole 16-bit words.</summary>
    internal string[] Hex { get; }

    internal string[] TagUri { get; }

    private (string Hex, string Uri) Sgtin(bool text)
    {
        var bits = new BitList();
        (int filter, int partition, string prefix) = Start(bits, text ? 0x36u : 0x30u, 0);
        string item = Padded(bits, 13 - prefix.Length, 44 - PrefixBits[partition]);
        string serial;
        if (text)
        {
            string plain = Text(Alphanumeric + "-", 4 + _draw.Below(17), '/');
            serial = plain.Replace("/", "%2F", StringComparison.Ordinal);
            for (int i = 0; i < 20; i++)
            {
                bits.Put(i < plain.Length ? plain[i] : 0u, 7);
            }
        }
        else
        {
            ulong number = _draw.Below(1UL << 38);
            bits.Put(number, 38);
            serial = number.ToString(CultureInfo.InvariantCulture);
        }

        return (bits.Hex(), FormattableString.Invariant($"urn:epc:tag:sgtin-{(text ? 198 : 96)}:{filter}.{prefix}.{item}.{serial}"));
    }

    private (string Hex, string Uri) Giai()
    {
        var bits = new BitList();
        (int filter, int partition, string prefix) = Start(bits, 0x34, 0);
        int width = 82 - PrefixBits[partition];
        ulong reference = _draw.Below(Math.Min(1UL << width, PowersOfTen[Math.Min(19, 13 + partition)]));
        bits.Put(reference, width);
        return (bits.Hex(), FormattableString.Invariant($"urn:epc:tag:giai-96:{filter}.{prefix}.{reference}"));
    }

    private (string Hex, string Uri) Grai()
    {
        var bits = new BitList();
        (int filter, int partition, string prefix) = Start(bits, 0x33, 1);
        string type = Padded(bits, 12 - prefix.Length, 44 - PrefixBits[partition]);
        ulong serial = _draw.Below(1UL << 38);
        bits.Put(serial, 38);
        return (bits.Hex(), FormattableString.Invariant($"urn:epc:tag:grai-96:{filter}.{prefix}.{type}.{serial}"));
    }

    private (string Hex, string Uri) Adi()
    {
        var bits = new BitList();
        int filter = _draw.Below(64);
        string cage = Text(Cage, 5, '\0');
        string part = Text(Alphanumeric + "-", 3 + _draw.Below(18), '/');
        string serial = Text(Alphanumeric, 1 + _draw.Below(12), '\0');
        serial = _draw.Below(20) == 0 ? "#" + serial : serial;
        bits.Put(0x3B, 8);
        bits.Put((ulong)filter, 6);
        bits.Put(32, 6);
        foreach (char character in cage + part + "@" + serial + "@")
        {
            bits.Put(character & 63u, 6);
        }

        string escaped = part.Replace("/", "%2F", StringComparison.Ordinal) + "." + serial.Replace("#", "%23", StringComparison.Ordinal);
        return (bits.Hex(), FormattableString.Invariant($"urn:epc:tag:adi-var:{filter}.{cage}.{escaped}"));
    }

    private (int Filter, int Partition, string Prefix) Start(BitList bits, uint header, int lowestPartition)
    {
        int filter = _draw.Below(8);
        int partition = lowestPartition + _draw.Below(7 - lowestPartition);
        bits.Put(header, 8);
        bits.Put((ulong)filter, 3);
        bits.Put((ulong)partition, 3);
        return (filter, partition, Padded(bits, 12 - partition, PrefixBits[partition]));
    }

    private string Padded(BitList bits, int digits, int width)
    {
        ulong number = _draw.Below(PowersOfTen[digits]);
        bits.Put(number, width);
        return number.ToString(CultureInfo.InvariantCulture).PadLeft(digits, '0');
    }

    // One in twenty texts gets one special character, not first and not last.
    private string Text(string set, int length, char special)
    {
        char[] characters = Enumerable.Range(0, length).Select(_ => set[_draw.Below(set.Length)]).ToArray();
        if (special != '\0' && length > 2 && _draw.Below(20) == 0)
        {
            characters[1 + _draw.Below(length - 2)] = special;
        }

        return new string(characters);
    }

    private sealed class BitList
    {
        private readonly List<bool> _bits = [];

        internal void Put(ulong value, int width)
        {
            for (int i = width - 1; i >= 0; i--)
            {
                _bits.Add(((value >> i) & 1) != 0);
            }
        }

        internal string Hex()
        {
            while (_bits.Count % 16 != 0)
            {
                _bits.Add(false);
            }

            var text = new StringBuilder();
            for (int i = 0; i < _bits.Count; i += 4)
            {
                text.Append("0123456789ABCDEF"[(_bits[i] ? 8 : 0) + (_bits[i + 1] ? 4 : 0) + (_bits[i + 2] ? 2 : 0) + (_bits[i + 3] ? 1 : 0)]);
            }

            return text.ToString();
        }
    }
}
