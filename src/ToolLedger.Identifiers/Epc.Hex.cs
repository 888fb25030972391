using System;
using System.Globalization;

namespace ToolLedger.Identifiers;

/// <content>Hexadecimal text in and out.</content>
public readonly partial struct Epc
{
    /// <summary>Reads hexadecimal digits of either case, four bits each.</summary>
    /// <param name="hex">The digits, without prefix, separators or white space.</param>
    /// <returns>The value, of four bits for each digit; empty text gives the empty value.</returns>
    /// <exception cref="ArgumentNullException">The text is <see langword="null"/>.</exception>
    /// <exception cref="FormatException">A character is not a hexadecimal digit, or there are over 16,383 of them.</exception>
    public static Epc Parse(string hex) =>
        hex is null ? throw new ArgumentNullException(nameof(hex)) : Parse(hex.AsSpan());

    /// <summary>Reads hexadecimal digits of either case, four bits each.</summary>
    /// <param name="hex">The digits, without prefix, separators or white space.</param>
    /// <returns>The value, of four bits for each digit; empty text gives the empty value.</returns>
    /// <exception cref="FormatException">A character is not a hexadecimal digit, or there are over 16,383 of them.</exception>
    public static Epc Parse(ReadOnlySpan<char> hex) => TryParse(hex, out Epc epc) ? epc : throw NotHex(hex);

    /// <summary>Reads hexadecimal digits of either case, without an exception.</summary>
    /// <param name="hex">The digits, without prefix, separators or white space: at most 16,383.</param>
    /// <param name="epc">The value, or the empty value when the answer is <see langword="false"/>.</param>
    /// <returns>Whether every character was a digit and the value is not too long.</returns>
    public static bool TryParse(ReadOnlySpan<char> hex, out Epc epc)
    {
        int length = hex.Length;
        if (length is 24)
        {
            // What nearly every reader reports: 96 bits. The second read overlaps the first, so that both are 16 digits.
            bool good = HexText.TryReadWord(hex.Slice(0, 16), out ulong high) & HexText.TryReadWord(hex.Slice(8, 16), out ulong low);
            epc = good ? new Epc(high, low << 32, null, 96) : default;
            return good;
        }

        if (length > MaxBitCount / 4)
        {
            epc = default;
            return false;
        }

        bool valid = ReadDigits(hex, 0, out ulong first) & ReadDigits(hex, 16, out ulong second);
        if (!valid || (length > 32 && !AreDigits(hex.Slice(32))))
        {
            epc = default;
            return false;
        }

        // Only now is it certain that a tail is kept.
        ulong[]? tail = length > 32 ? new ulong[(length - 17) / 16] : null;
        for (int i = 0; tail is not null && i < tail.Length; i++)
        {
            ReadDigits(hex, 32 + (16 * i), out tail[i]);
        }

        epc = new Epc(first, second, tail, length * 4);
        return true;
    }

    /// <summary>Reads hexadecimal digits of either case from UTF-8 text, without an exception.</summary>
    /// <param name="utf8Hex">The digits, without prefix, separators or white space: at most 16,383.</param>
    /// <param name="epc">The value, or the empty value when the answer is <see langword="false"/>.</param>
    /// <returns>Whether every character was a digit and the value is not too long.</returns>
    public static bool TryParse(ReadOnlySpan<byte> utf8Hex, out Epc epc)
    {
        int length = utf8Hex.Length;
        if (length is 24)
        {
            bool good = HexText.TryReadWord(utf8Hex.Slice(0, 16), out ulong high)
                & HexText.TryReadWord(utf8Hex.Slice(8, 16), out ulong low);
            epc = good ? new Epc(high, low << 32, null, 96) : default;
            return good;
        }

        if (length > MaxBitCount / 4)
        {
            epc = default;
            return false;
        }

        bool valid = ReadDigits(utf8Hex, 0, out ulong first) & ReadDigits(utf8Hex, 16, out ulong second);
        if (!valid || (length > 32 && !AreDigits(utf8Hex.Slice(32))))
        {
            epc = default;
            return false;
        }

        // Only now is it certain that a tail is kept.
        ulong[]? tail = length > 32 ? new ulong[(length - 17) / 16] : null;
        for (int i = 0; tail is not null && i < tail.Length; i++)
        {
            ReadDigits(utf8Hex, 32 + (16 * i), out tail[i]);
        }

        epc = new Epc(first, second, tail, length * 4);
        return true;
    }

    /// <summary>Writes upper-case hexadecimal digits, the last one padded with zero bits.</summary>
    /// <param name="destination">Where to write; one character for every four bits begun.</param>
    /// <param name="charsWritten">How many characters were written; 0 when the answer is <see langword="false"/>.</param>
    /// <returns>Whether there was room.</returns>
    public bool TryFormatHex(Span<char> destination, out int charsWritten)
    {
        int count = (_bitCount + 3) / 4;
        if (destination.Length < count)
        {
            charsWritten = 0;
            return false;
        }

        Span<byte> digits = stackalloc byte[16];
        for (int at = 0; at < count; at += 16)
        {
            HexText.Write(WordAt(at / 16), digits);
            int here = Math.Min(16, count - at);
            for (int i = 0; i < here; i++)
            {
                destination[at + i] = (char)digits[i];
            }
        }

        charsWritten = count;
        return true;
    }

    /// <summary>Writes upper-case hexadecimal digits as UTF-8, the last one padded with zero bits.</summary>
    /// <param name="utf8Destination">Where to write; one byte for every four bits begun.</param>
    /// <param name="bytesWritten">How many bytes were written; 0 when the answer is <see langword="false"/>.</param>
    /// <returns>Whether there was room.</returns>
    public bool TryFormatHex(Span<byte> utf8Destination, out int bytesWritten)
    {
        int count = (_bitCount + 3) / 4;
        if (utf8Destination.Length < count)
        {
            bytesWritten = 0;
            return false;
        }

        for (int at = 0; at < count; at += 16)
        {
            HexText.Write(WordAt(at / 16), utf8Destination.Slice(at, Math.Min(16, count - at)));
        }

        bytesWritten = count;
        return true;
    }

    /// <summary>The bits as upper-case hexadecimal digits, the last one padded with zero bits.</summary>
    /// <returns>The digits; empty text for the empty value.</returns>
    public override string ToString()
    {
        int count = (_bitCount + 3) / 4;
        if (count == 0)
        {
            return string.Empty;
        }

        Span<char> text = count <= 256 ? stackalloc char[count] : new char[count];
        TryFormatHex(text, out _);
        return text.ToString();
    }

    /// <summary>The value as text.</summary>
    /// <param name="format"><c>X</c>, <c>G</c> or empty: upper-case hexadecimal digits; <c>x</c>: lower-case ones;
    /// <c>T</c>: tag URI; <c>I</c>: pure identity URI; <c>R</c>: raw URI.</param>
    /// <returns>The text.</returns>
    /// <exception cref="FormatException">The format is not one of these.</exception>
    public string ToString(string? format) => format switch
    {
        null or "" or "X" or "G" => ToString(),
        "x" => ToString().ToLowerInvariant(),
        "T" => ToTagUri(),
        "I" => ToPureIdentityUri(),
        "R" => ToRawUri(),
        _ => throw new FormatException("The format of an EPC is X, x, G, T, I or R."),
    };

    string IFormattable.ToString(string? format, IFormatProvider? formatProvider) => ToString(format);

    private static bool ReadDigits(ReadOnlySpan<char> hex, int from, out ulong word)
    {
        word = 0;
        return from >= hex.Length || HexText.TryReadWord(hex.Slice(from, Math.Min(16, hex.Length - from)), out word);
    }

    private static bool ReadDigits(ReadOnlySpan<byte> hex, int from, out ulong word)
    {
        word = 0;
        return from >= hex.Length || HexText.TryReadWord(hex.Slice(from, Math.Min(16, hex.Length - from)), out word);
    }

    private static bool AreDigits(ReadOnlySpan<char> hex)
    {
        bool valid = true;
        for (int from = 0; from < hex.Length && valid; from += 16)
        {
            valid = ReadDigits(hex, from, out _);
        }

        return valid;
    }

    private static bool AreDigits(ReadOnlySpan<byte> hex)
    {
        bool valid = true;
        for (int from = 0; from < hex.Length && valid; from += 16)
        {
            valid = ReadDigits(hex, from, out _);
        }

        return valid;
    }

    private static FormatException NotHex(ReadOnlySpan<char> hex)
    {
        if (hex.Length > MaxBitCount / 4)
        {
            return new FormatException(string.Format(
                CultureInfo.InvariantCulture, "An EPC has at most 16383 hexadecimal digits, not {0}.", hex.Length));
        }

        int at = 0;
        while (at < hex.Length && HexText.Nibble(hex[at]) <= 15)
        {
            at++;
        }

        return new FormatException(string.Format(
            CultureInfo.InvariantCulture,
            "The character U+{0:X4} at position {1} is not a hexadecimal digit.",
            at < hex.Length ? (int)hex[at] : 0,
            at));
    }
}
