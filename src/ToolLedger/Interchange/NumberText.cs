using System;
using System.Buffers.Text;

namespace ToolLedger.Interchange;

/// <summary>Reads numbers from UTF-8 digits: whole numbers, and dBm exactly to the hundredth.</summary>
internal static class NumberText
{
    /// <summary>Reads a whole number without plus sign; leading zeros are fine.</summary>
    internal static bool TryReadInt64(ReadOnlySpan<byte> text, out long value) =>
        Utf8Parser.TryParse(text, out value, out int used) && used == text.Length && text[0] != '+';

    /// <summary>Reads a small whole number without sign.</summary>
    internal static bool TryReadPort(ReadOnlySpan<byte> text, out byte value)
    {
        int number = 0;
        foreach (byte digit in text)
        {
            int next = digit - '0';
            if ((uint)next > 9 || number > byte.MaxValue)
            {
                number = 0;
                break;
            }

            number = (number * 10) + next;
        }

        bool fits = number is >= 1 and <= byte.MaxValue;
        value = fits ? (byte)number : (byte)0;
        return fits;
    }

    /// <summary>Reads a decimal number times 100, rounded to a whole one, halves away from zero.</summary>
    internal static bool TryReadHundredths(ReadOnlySpan<byte> text, out short value)
    {
        value = 0;
        int at = text.Length > 0 && text[0] == '-' ? 1 : 0;
        int sign = 1 - (2 * at);
        int hundredths = 0;
        int digits = 0;
        while (at < text.Length && (uint)(text[at] - '0') <= 9 && digits < 6)
        {
            hundredths = (hundredths * 10) + (text[at++] - '0');
            digits++;
        }

        // Anything longer or stranger takes the slow way; both give the same value where both can read it.
        if (digits is 0 or 6 || (at < text.Length && text[at] != '.') || text.Length - at is 1 or > 3)
        {
            return TryReadDecimal(text, out value);
        }

        hundredths *= 100;
        int scale = 10;
        for (at++; at < text.Length; at++)
        {
            uint digit = (uint)(text[at] - '0');
            if (digit > 9)
            {
                return TryReadDecimal(text, out value);
            }

            hundredths += (int)digit * scale;
            scale = 1;
        }

        hundredths *= sign;
        value = (short)hundredths;
        return value == hundredths;
    }

    private static bool TryReadDecimal(ReadOnlySpan<byte> text, out short value)
    {
        value = 0;
        if (text.IsEmpty || text[0] == '+' || text[^1] == '.' || !HasLeadingDigit(text))
        {
            return false;
        }

        char format = text.IndexOfAny((byte)'e', (byte)'E') >= 0 ? 'E' : default;
        if (!Utf8Parser.TryParse(text, out decimal number, out int used, format) || used != text.Length || Math.Abs(number) > 1_000)
        {
            return false;
        }

        decimal hundredths = Math.Round(number * 100, MidpointRounding.AwayFromZero);
        bool fits = hundredths is >= short.MinValue and <= short.MaxValue;
        value = fits ? (short)hundredths : (short)0;
        return fits;
    }

    private static bool HasLeadingDigit(ReadOnlySpan<byte> text)
    {
        int at = text[0] == '-' ? 1 : 0;
        return at < text.Length && (uint)(text[at] - '0') <= 9;
    }
}
