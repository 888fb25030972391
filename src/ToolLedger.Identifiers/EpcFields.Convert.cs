using System;
using ToolLedger.Identifiers.Schemes;

namespace ToolLedger.Identifiers;

/// <content>From text to text in one step, without a value in between.</content>
public readonly partial struct EpcFields
{
    /// <summary>Decodes hexadecimal digits and writes the tag URI, both UTF-8.</summary>
    /// <param name="utf8Hex">The digits, of either case, four bits each.</param>
    /// <param name="utf8Destination">Where to write; 384 bytes are always enough and save a copy.</param>
    /// <param name="bytesWritten">How many bytes were written; 0 when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the digits decode and there was room. There is no raw URI in its place:
    /// <see cref="Epc.TryFormatTagUri(Span{byte}, out int)"/> gives one.</returns>
    public static bool TryConvertHexToTagUri(ReadOnlySpan<byte> utf8Hex, Span<byte> utf8Destination, out int bytesWritten)
    {
        Span<ulong> words = stackalloc ulong[Bits.Words];
        IdentityBits bits = default;
        EpcFault fault = default;
        bytesWritten = 0;
        return HexWords.TryRead(utf8Hex, words, out int bitCount)
            && TryDecode(words, bitCount, EpcDecoding.Lenient, ref bits, ref fault)
            && TryFormatTagUri(bits, utf8Destination, out bytesWritten);
    }

    /// <summary>Reads a tag URI and writes the bits as upper-case hexadecimal digits, both UTF-8.</summary>
    /// <param name="utf8Uri">The URI: at most 512 bytes.</param>
    /// <param name="utf8Destination">Where to write.</param>
    /// <param name="bytesWritten">How many bytes were written; 0 when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the URI is valid and there was room.</returns>
    public static bool TryConvertTagUriToHex(ReadOnlySpan<byte> utf8Uri, Span<byte> utf8Destination, out int bytesWritten)
    {
        Span<ulong> words = stackalloc ulong[Bits.Words];
        EpcFault fault = default;
        bytesWritten = 0;
        return TagUri.TryEncode(utf8Uri, words, out int used, ref fault)
            && HexWords.TryWrite(words, used, utf8Destination, out bytesWritten);
    }

    /// <summary>The bits as upper-case hexadecimal digits, padded with zero bits to whole digits.</summary>
    /// <returns>The digits; empty text for the default value.</returns>
    public string ToHex()
    {
        Span<byte> digits = stackalloc byte[16 * Bits.Words];
        TryFormatHex(digits, out int count);
        return AsciiText.ToText(digits.Slice(0, count));
    }
}
