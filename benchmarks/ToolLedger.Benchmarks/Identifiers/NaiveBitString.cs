using System;
using System.Globalization;
using System.Linq;
using System.Numerics;
using System.Text;

namespace ToolLedger.Benchmarks.Identifiers;

/// <summary>
/// The decoder that a careful person writes first: the bits as a text of zeros and ones. It is the baseline of the benchmarks
/// and reads the five schemes of the corpus.
/// </summary>
internal static class NaiveBitString
{
    private static readonly int[] PrefixBits = [40, 37, 34, 30, 27, 24, 20];

    internal static string TagUri(string hex)
    {
        string bits = string.Concat(hex.Select(c => Convert.ToString(Convert.ToInt32(c.ToString(), 16), 2).PadLeft(4, '0')));
        switch (Number(bits, 0, 8))
        {
            case 0x30: return Partitioned(bits, "sgtin-96", 44, 13, b => Number(b, 58, 38).ToString(CultureInfo.InvariantCulture));
            case 0x33: return Partitioned(bits, "grai-96", 44, 12, b => Number(b, 58, 38).ToString(CultureInfo.InvariantCulture));
            case 0x36: return Partitioned(bits, "sgtin-198", 44, 13, b => Text(b, 58, 20));
            case 0x34: return Giai(bits);
            default: return Adi(bits);
        }
    }

    private static ulong Number(string bits, int from, int count) => Convert.ToUInt64(bits.Substring(from, count), 2);

    private static string Partitioned(string bits, string name, int width, int digits, Func<string, string> serial)
    {
        int partition = (int)Number(bits, 11, 3);
        int prefixDigits = 12 - partition;
        string prefix = Number(bits, 14, PrefixBits[partition]).ToString(CultureInfo.InvariantCulture).PadLeft(prefixDigits, '0');
        string item = Number(bits, 14 + PrefixBits[partition], width - PrefixBits[partition]).ToString(CultureInfo.InvariantCulture)
            .PadLeft(digits - prefixDigits, '0');
        return "urn:epc:tag:" + name + ":" + Number(bits, 8, 3) + "." + prefix + "." + item + "." + serial(bits);
    }

    private static string Giai(string bits)
    {
        int partition = (int)Number(bits, 11, 3);
        string prefix = Number(bits, 14, PrefixBits[partition]).ToString(CultureInfo.InvariantCulture).PadLeft(12 - partition, '0');
        int width = 82 - PrefixBits[partition];
        BigInteger reference = Number(bits, 14 + PrefixBits[partition], width);
        return "urn:epc:tag:giai-96:" + Number(bits, 8, 3) + "." + prefix + "." + reference.ToString(CultureInfo.InvariantCulture);
    }

    private static string Adi(string bits)
    {
        int at = 14;
        string cage = Six(bits, ref at, 6).TrimStart(' ');
        string part = Six(bits, ref at, 33);
        string serial = Six(bits, ref at, 31);
        return "urn:epc:tag:adi-var:" + Number(bits, 8, 6) + "." + cage + "." + Escape(part) + "." + Escape(serial);
    }

    private static string Six(string bits, ref int at, int most)
    {
        var text = new StringBuilder();
        for (int i = 0; i < most; i++)
        {
            int code = (int)Number(bits, at, 6);
            at += 6;
            if (code == 0)
            {
                break;
            }

            text.Append((char)(code < 32 ? code + 64 : code));
        }

        return text.ToString();
    }

    private static string Text(string bits, int from, int most)
    {
        var text = new StringBuilder();
        for (int i = 0; i < most; i++)
        {
            int code = (int)Number(bits, from + (7 * i), 7);
            if (code == 0)
            {
                break;
            }

            text.Append((char)code);
        }

        return Escape(text.ToString());
    }

    private static string Escape(string text) => string.Concat(text.Select(c => "\"#%&/<>?".Contains(c, StringComparison.Ordinal)
        ? "%" + ((int)c).ToString("X2", CultureInfo.InvariantCulture)
        : c.ToString()));
}
