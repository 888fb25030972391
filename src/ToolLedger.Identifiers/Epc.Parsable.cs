#if NET
using System;
using System.Text;

namespace ToolLedger.Identifiers;

/// <content>
/// The parsing and formatting interfaces of the platform. They are implemented explicitly: the text of an EPC is the same
/// in every culture, and the plain methods say so by having no provider.
/// </content>
public readonly partial struct Epc
{
    static Epc IParsable<Epc>.Parse(string s, IFormatProvider? provider) => Parse(s);

    static bool IParsable<Epc>.TryParse(string? s, IFormatProvider? provider, out Epc result)
    {
        result = default;
        return s is not null && TryParse(s.AsSpan(), out result);
    }

    static Epc ISpanParsable<Epc>.Parse(ReadOnlySpan<char> s, IFormatProvider? provider) => Parse(s);

    static bool ISpanParsable<Epc>.TryParse(ReadOnlySpan<char> s, IFormatProvider? provider, out Epc result) =>
        TryParse(s, out result);

    static Epc IUtf8SpanParsable<Epc>.Parse(ReadOnlySpan<byte> utf8Text, IFormatProvider? provider) =>
        TryParse(utf8Text, out Epc epc) ? epc : throw new FormatException("The text is not up to 16383 hexadecimal digits.");

    static bool IUtf8SpanParsable<Epc>.TryParse(ReadOnlySpan<byte> utf8Text, IFormatProvider? provider, out Epc result) =>
        TryParse(utf8Text, out result);

    bool ISpanFormattable.TryFormat(
        Span<char> destination, out int charsWritten, ReadOnlySpan<char> format, IFormatProvider? provider)
    {
        if (format is "" or "X" or "G")
        {
            return TryFormatHex(destination, out charsWritten);
        }

        if (format is "T")
        {
            return TryFormatTagUri(destination, out charsWritten);
        }

        string text = ToString(format.ToString());
        charsWritten = text.TryCopyTo(destination) ? text.Length : 0;
        return charsWritten == text.Length;
    }

    bool IUtf8SpanFormattable.TryFormat(
        Span<byte> utf8Destination, out int bytesWritten, ReadOnlySpan<char> format, IFormatProvider? provider)
    {
        if (format is "" or "X" or "G")
        {
            return TryFormatHex(utf8Destination, out bytesWritten);
        }

        return format is "T"
            ? TryFormatTagUri(utf8Destination, out bytesWritten)
            : Encoding.UTF8.TryGetBytes(ToString(format.ToString()), utf8Destination, out bytesWritten);
    }
}
#endif
