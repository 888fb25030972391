using System;
using System.Globalization;
using ToolLedger.Identifiers;
using ToolLedger.Records;

namespace ToolLedger.Tools;

/// <content>Text form of a tag id.</content>
public readonly partial struct TagId
{
    private const string EpcPrefix = "epc:";
    private const string Iso11784Prefix = "iso11784:";
    private const string Iso15693Prefix = "iso15693:";
    private const string TextPrefix = "text:";
    private const int NumberDigitCount = 16;

    /// <summary>Reads a tag id: <c>epc:</c>, <c>iso11784:</c>, <c>iso15693:</c> with hexadecimal digits, <c>text:</c> with text, or bare hexadecimal digits (an EPC).</summary>
    /// <param name="text">The text.</param>
    /// <returns>The tag id.</returns>
    /// <exception cref="FormatException">The text has another form.</exception>
    public static TagId Parse(ReadOnlySpan<char> text) => TryParse(text, out TagId tag) ? tag
        : throw new FormatException($"A tag id is epc:HEX, iso11784:HEX, iso15693:HEX (16 digits), text:TEXT or bare EPC digits; got {text.Length} characters.");

    /// <summary>Reads a tag id if the text has one of the forms of <see cref="Parse"/>; an empty EPC is refused.</summary>
    /// <param name="text">The text.</param>
    /// <param name="tag">The tag id, or the default value.</param>
    /// <returns>False if the text has another form.</returns>
    public static bool TryParse(ReadOnlySpan<char> text, out TagId tag)
    {
        if (text.StartsWith(TextPrefix, StringComparison.Ordinal))
        {
            string rest = text.Length > TextPrefix.Length + (2 * IdText.MaxLength) ? "" : text[TextPrefix.Length..].ToString();
            bool valid = IdText.IsValid(rest);
            tag = valid ? new TagId(TagIdKind.Text, MoreWords, 0, 0, rest) : default;
            return valid;
        }

        if (text.StartsWith(Iso11784Prefix, StringComparison.Ordinal))
        {
            return TryParseNumber(text[Iso11784Prefix.Length..], TagIdKind.Iso11784, out tag);
        }

        if (text.StartsWith(Iso15693Prefix, StringComparison.Ordinal))
        {
            return TryParseNumber(text[Iso15693Prefix.Length..], TagIdKind.Iso15693, out tag);
        }

        if (text.StartsWith(EpcPrefix, StringComparison.Ordinal))
        {
            text = text[EpcPrefix.Length..];
        }

        bool read = Epc.TryParse(text, out Epc epc) && !epc.IsEmpty;
        tag = read ? FromEpc(epc) : default;
        return read;
    }

    /// <summary>Reads the hexadecimal digits of an EPC from a file or message; allocates nothing up to 128 bits.</summary>
    /// <param name="utf8">1 to 16,383 hexadecimal digits of either case and nothing else.</param>
    /// <param name="tag">The tag id, or the default value.</param>
    /// <returns>False if there are other characters, no digits, or too many.</returns>
    public static bool TryParseEpcHex(ReadOnlySpan<byte> utf8, out TagId tag)
    {
        bool read = Epc.TryParse(utf8, out Epc epc) && !epc.IsEmpty;
        tag = read ? FromEpc(epc) : default;
        return read;
    }

    /// <summary>The text form with its prefix; an EPC without bits gives <c>epc:</c>.</summary>
    /// <returns>Text that <see cref="Parse"/> reads back, unless the id is empty.</returns>
    public override string ToString() => Kind switch
    {
        TagIdKind.Epc => EpcPrefix + Bits.ToString(),
        TagIdKind.Iso11784 => Iso11784Prefix + Number.ToString("X16", CultureInfo.InvariantCulture),
        TagIdKind.Iso15693 => Iso15693Prefix + Number.ToString("X16", CultureInfo.InvariantCulture),
        _ => TextPrefix + Text,
    };

    private static bool TryParseNumber(ReadOnlySpan<char> digits, TagIdKind kind, out TagId tag)
    {
        tag = default;
        if (digits.Length != NumberDigitCount
            || !ulong.TryParse(digits, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out ulong number))
        {
            return false;
        }

        tag = new TagId(kind, NumberWords, number, 0, null);
        return true;
    }
}
