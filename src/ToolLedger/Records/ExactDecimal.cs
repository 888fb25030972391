using System;
using System.Globalization;
using System.Text;
using System.Text.Json;

namespace ToolLedger.Records;

/// <summary>Numbers of JSON read without rounding: what is kept is what was written, or nothing.</summary>
/// <remarks>A plain reading rounds to 28 or 29 digits, so that 5.99999999999999999999999999999999999 would count as 6.</remarks>
internal static class ExactDecimal
{
    /// <summary>Every number of so many digits between 10^-28 and 10^28 is exact in a decimal.</summary>
    internal const int MaxDigitCount = 28;

    /// <summary>Reads the number the reader stands on; one that cannot be kept exactly has no value, only its text.</summary>
    internal static JsonNumber Read(ref Utf8JsonReader reader)
    {
        if (!reader.HasValueSequence && IsExact(reader.ValueSpan) && reader.TryGetDecimal(out decimal value))
        {
            return new JsonNumber(value);
        }

        string? written = reader.HasValueSequence ? null : SafeText.Excerpt(Encoding.UTF8.GetString(reader.ValueSpan));
        return new JsonNumber(null, JsonTokenType.Number, written);
    }

    /// <summary>Reads a number of a document; false if it cannot be kept exactly.</summary>
    internal static bool TryRead(JsonElement number, out decimal value)
    {
        value = 0;
        return IsExact(Encoding.UTF8.GetBytes(number.GetRawText())) && number.TryGetDecimal(out value);
    }

    /// <summary>Whether the digits as written fit a decimal without rounding; zeros at either end do not count.</summary>
    internal static bool IsExact(ReadOnlySpan<byte> number)
    {
        int mark = number.IndexOfAny((byte)'e', (byte)'E');
        ReadOnlySpan<byte> mantissa = (mark < 0 ? number : number[..mark]).TrimStart((byte)'-');
        int exponent = 0;
        if (mark >= 0 && !int.TryParse(number[(mark + 1)..], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out exponent))
        {
            return false;
        }

        int point = mantissa.IndexOf((byte)'.');
        long lastPlace = exponent - (point < 0 ? 0 : mantissa.Length - point - 1);
        int digitCount = 0;
        int zeroCount = 0; // zeros since the last other digit
        foreach (byte digit in mantissa)
        {
            if (digit == (byte)'.')
            {
                continue;
            }

            bool isZero = digit == (byte)'0';
            digitCount += !isZero ? zeroCount + 1 : 0;
            zeroCount = isZero && digitCount > 0 ? zeroCount + 1 : 0;
        }

        return digitCount == 0 || (digitCount <= MaxDigitCount && lastPlace + zeroCount >= -MaxDigitCount);
    }
}
