using System;
using ToolLedger.Identifiers.Schemes;

namespace ToolLedger.Identifiers;

/// <content>Bits in and out.</content>
public readonly partial struct EpcFields
{
    /// <summary>Decodes an EPC, ignoring bits behind the end of its coding.</summary>
    /// <param name="epc">The EPC.</param>
    /// <returns>The fields.</returns>
    /// <exception cref="FormatException">The bits break a rule; the message says which, and where.</exception>
    public static EpcFields Decode(Epc epc) =>
        TryDecode(epc, EpcDecoding.Lenient, out EpcFields fields, out EpcFault fault)
            ? fields
            : throw new FormatException(fault.ToString());

    /// <summary>Decodes an EPC, without an exception, ignoring bits behind the end of its coding.</summary>
    /// <param name="epc">The EPC.</param>
    /// <param name="fields">The fields, or the default value when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the bits follow the rules of their scheme.</returns>
    public static bool TryDecode(Epc epc, out EpcFields fields) => TryDecode(epc, EpcDecoding.Lenient, out fields, out _);

    /// <summary>Decodes an EPC, without an exception.</summary>
    /// <param name="epc">The EPC.</param>
    /// <param name="decoding">What is asked of the bits behind the end of the coding.</param>
    /// <param name="fields">The fields, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken and where, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the bits follow the rules of their scheme.</returns>
    public static bool TryDecode(Epc epc, EpcDecoding decoding, out EpcFields fields, out EpcFault fault)
    {
        Span<ulong> words = stackalloc ulong[Bits.Words];
        int bitCount = Math.Min(epc.BitCount, Bits.MaximumDecoded + 1);
        for (int i = 0; i << 6 < bitCount; i++)
        {
            words[i] = epc.WordAt(i);
        }

        return TryDecode(words, bitCount, decoding, out fields, out fault);
    }

    /// <summary>Decodes hexadecimal digits of UTF-8 text, without an exception and without keeping the bits.</summary>
    /// <param name="utf8Hex">The digits, of either case, four bits each.</param>
    /// <param name="fields">The fields, or the default value when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the text is hexadecimal and the bits follow the rules of their scheme.</returns>
    public static bool TryDecodeHex(ReadOnlySpan<byte> utf8Hex, out EpcFields fields) =>
        TryDecodeHex(utf8Hex, EpcDecoding.Lenient, out fields, out _);

    /// <summary>Decodes hexadecimal digits of UTF-8 text, without an exception and without keeping the bits.</summary>
    /// <param name="utf8Hex">The digits, of either case, four bits each.</param>
    /// <param name="decoding">What is asked of the bits behind the end of the coding.</param>
    /// <param name="fields">The fields, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken and where, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the text is hexadecimal and the bits follow the rules of their scheme.</returns>
    public static bool TryDecodeHex(
        ReadOnlySpan<byte> utf8Hex, EpcDecoding decoding, out EpcFields fields, out EpcFault fault)
    {
        Span<ulong> words = stackalloc ulong[Bits.Words];
        if (!HexWords.TryRead(utf8Hex, words, out int bitCount))
        {
            fields = default;
            fault = HexWords.Fault(utf8Hex);
            return false;
        }

        return TryDecode(words, bitCount, decoding, out fields, out fault);
    }

    /// <summary>Decodes hexadecimal digits, without an exception and without keeping the bits.</summary>
    /// <param name="hex">The digits, of either case, four bits each.</param>
    /// <param name="decoding">What is asked of the bits behind the end of the coding.</param>
    /// <param name="fields">The fields, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken and where, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the text is hexadecimal and the bits follow the rules of their scheme.</returns>
    public static bool TryDecodeHex(
        ReadOnlySpan<char> hex, EpcDecoding decoding, out EpcFields fields, out EpcFault fault)
    {
        Span<byte> room = stackalloc byte[(Bits.MaximumDecoded / 4) + 4];
        fields = default;
        return AsciiText.TryNarrow(hex, room, out ReadOnlySpan<byte> bytes, out fault)
            && TryDecodeHex(bytes, decoding, out fields, out fault);
    }

    /// <summary>The bits.</summary>
    /// <returns>The EPC, of exactly the bits that the coding has; the empty value for the default fields.</returns>
    public Epc ToEpc()
    {
        Span<ulong> words = stackalloc ulong[Bits.Words];
        int bitCount = Encode(words);
        ulong[]? tail = bitCount > Epc.InlineBits ? words.Slice(2, (bitCount - Epc.InlineBits + 63) / 64).ToArray() : null;
        return new Epc(words[0], words[1], tail, bitCount);
    }

    /// <summary>Writes the bits as upper-case hexadecimal digits, padded with zero bits to whole digits.</summary>
    /// <param name="utf8Destination">Where to write.</param>
    /// <param name="bytesWritten">How many bytes were written; 0 when the answer is <see langword="false"/>.</param>
    /// <returns>Whether there was room.</returns>
    public bool TryFormatHex(Span<byte> utf8Destination, out int bytesWritten)
    {
        Span<ulong> words = stackalloc ulong[Bits.Words];
        return HexWords.TryWrite(words, Encode(words), utf8Destination, out bytesWritten);
    }

    internal static bool TryDecode(
        ReadOnlySpan<ulong> words, int bitCount, EpcDecoding decoding, out EpcFields fields, out EpcFault fault)
    {
        fault = default;
        IdentityBits bits = default;
        if (TryDecode(words, bitCount, decoding, ref bits, ref fault))
        {
            fields = new EpcFields(bits);
            return true;
        }

        fields = default;
        return false;
    }

    internal static bool TryDecode(
        ReadOnlySpan<ulong> words, int bitCount, EpcDecoding decoding, ref IdentityBits bits, ref EpcFault fault)
    {
        byte header = (byte)(words[0] >> 56);
        EpcCodec? codec = SchemeList.OfHeader(header);
        if (codec is null || bitCount < codec.MinimumBits || bitCount > Bits.MaximumDecoded)
        {
            fault = Headers.Fault(header, codec, bitCount);
            return false;
        }

        bits.Kind = codec.Kind;
        bits.Scheme = codec.Scheme;
        if (!codec.TryDecode(words, bitCount, ref bits, out int used, ref fault))
        {
            return false;
        }

        return decoding == EpcDecoding.Lenient || Headers.AcceptsPadding(words, used, bitCount, ref fault);
    }

    private int Encode(Span<ulong> words)
    {
        EpcCodec? codec = SchemeList.Of(_bits.Scheme);
        EpcFault fault = default;
        return codec is not null && codec.TryEncode(_bits, words, out int used, ref fault) ? used : 0;
    }
}
