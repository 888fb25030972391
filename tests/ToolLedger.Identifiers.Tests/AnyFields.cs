using System.Globalization;
using System.Linq;

namespace ToolLedger.Identifiers.Tests;

/// <summary>Random tag URIs of every scheme over its whole range, with its borders more often than chance would have them.</summary>
internal static class AnyFields
{
    internal const string Characters82 = "!\"%&'()*+,-./0123456789:;<=>?ABCDEFGHIJKLMNOPQRSTUVWXYZ_abcdefghijklmnopqrstuvwxyz";
    internal const string Characters39 = "#-/0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";
    private const string Cage = "0123456789ABCDEFGHJKLMNPQRSTUVWXYZ";

    internal static readonly EpcScheme[] Schemes =
    [
        EpcScheme.Sgtin96, EpcScheme.Sgtin198, EpcScheme.Sscc96, EpcScheme.Sgln96, EpcScheme.Sgln195, EpcScheme.Grai96,
        EpcScheme.Grai170, EpcScheme.Giai96, EpcScheme.Giai202, EpcScheme.Gsrn96, EpcScheme.Gsrnp96, EpcScheme.Gdti96,
        EpcScheme.Gdti113, EpcScheme.Gdti174, EpcScheme.Cpi96, EpcScheme.CpiVar, EpcScheme.Sgcn96, EpcScheme.Itip110,
        EpcScheme.Itip212, EpcScheme.Gid96, EpcScheme.Usdod96, EpcScheme.AdiVar,
    ];

    internal static string TagUri(EpcScheme scheme, SplitMix draw)
    {
        int length = 6 + draw.Below(7);
        string filter = draw.Below(8).ToString(CultureInfo.InvariantCulture) + ".";
        string prefix = Digits(length, draw) + ".";
        string Padded(int total) => filter + prefix + Digits(total - length, draw);

        return "urn:epc:tag:" + EpcSchemeName.Of(scheme).ToLowerInvariant() + ":" + scheme switch
        {
            EpcScheme.Sgtin96 => Padded(13) + "." + Number(38, draw),
            EpcScheme.Sgtin198 => Padded(13) + "." + Text(Characters82, 1, 20, draw),
            EpcScheme.Sscc96 or EpcScheme.Gsrn96 or EpcScheme.Gsrnp96 => Padded(17),
            EpcScheme.Sgln96 or EpcScheme.Gdti96 => Padded(12) + "." + Number(41, draw),
            EpcScheme.Sgln195 => Padded(12) + "." + Text(Characters82, 1, 20, draw),
            EpcScheme.Grai96 => Padded(12) + "." + Number(38, draw),
            EpcScheme.Grai170 => Padded(12) + "." + Text(Characters82, 1, 16, draw),
            EpcScheme.Giai96 => filter + prefix + Number(82 - PrefixBits(length), draw),
            EpcScheme.Giai202 => filter + prefix + Text(Characters82, 1, 30 - length, draw),
            EpcScheme.Gdti113 => Padded(12) + "." + Digits(1 + draw.Below(17), draw),
            EpcScheme.Gdti174 => Padded(12) + "." + Text(Characters82, 1, 17, draw),
            EpcScheme.Cpi96 => filter + prefix + Limited(15 - length, 51 - PrefixBits(length), draw) + "." + Number(31, draw),
            EpcScheme.CpiVar => filter + prefix + Text(Characters39, 1, 30 - length, draw) + "." + Limited(12, 40, draw),
            EpcScheme.Sgcn96 => Padded(12) + "." + Digits(1 + draw.Below(12), draw),
            EpcScheme.Itip110 => Padded(13) + "." + Digits(2, draw) + "." + Digits(2, draw) + "." + Number(38, draw),
            EpcScheme.Itip212 => Padded(13) + "." + Digits(2, draw) + "." + Digits(2, draw) + "." + Text(Characters82, 1, 20, draw),
            EpcScheme.Gid96 => Number(28, draw) + "." + Number(24, draw) + "." + Number(36, draw),
            EpcScheme.Usdod96 => draw.Below(16).ToString(CultureInfo.InvariantCulture) + "." + Text(Cage, 5, 6, draw) + "." + Number(36, draw),
            _ => draw.Below(64).ToString(CultureInfo.InvariantCulture) + "." + Text(Cage, 5, 6, draw) + "."
                + Text(Characters39.Substring(1), 0, 32, draw) + "." + AdiSerial(draw),
        };
    }

    private static string AdiSerial(SplitMix draw)
    {
        string mark = draw.Below(4) == 0 ? "%23" : string.Empty;
        return mark + Text(Characters39.Substring(1), 1, mark.Length > 0 ? 29 : 30, draw);
    }

    private static int PrefixBits(int digits) => new[] { 20, 24, 27, 30, 34, 37, 40 }[digits - 6];

    private static string Digits(int count, SplitMix draw)
    {
        int border = draw.Below(8);
        return string.Concat(Enumerable.Range(0, count).Select(_ =>
            border == 0 ? '0' : border == 1 ? '9' : (char)('0' + draw.Below(10))));
    }

    private static string Number(int bits, SplitMix draw)
    {
        ulong highest = (1UL << bits) - 1;
        ulong number = draw.Below(8) switch { 0 => 0, 1 => highest, 2 => (ulong)draw.Below(10), _ => draw.Next() & highest };
        return number.ToString(CultureInfo.InvariantCulture);
    }

    private static string Limited(int digits, int bits, SplitMix draw)
    {
        string text = Number(bits, draw);
        return text.Length <= digits ? text : text.Substring(0, digits);
    }

    private static string Text(string set, int shortest, int longest, SplitMix draw)
    {
        int length = draw.Below(4) == 0 ? longest : shortest + draw.Below(longest - shortest + 1);
        bool digits = draw.Below(5) == 0;
        return string.Concat(Enumerable.Range(0, length).Select(_ =>
            Escape(digits ? (char)('0' + draw.Below(10)) : set[draw.Below(set.Length)])));
    }

    private static string Escape(char character) => "\"#%&/<>?".Contains(character)
        ? "%" + ((int)character).ToString("X2", CultureInfo.InvariantCulture)
        : character.ToString();
}
