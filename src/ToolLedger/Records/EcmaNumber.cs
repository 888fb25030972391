using System;
using System.Globalization;

namespace ToolLedger.Records;

/// <summary>Numbers as ECMAScript writes them (ECMA-262, Number::toString, as RFC 8785 section 3.2.2.3 demands).</summary>
internal static class EcmaNumber
{
    /// <summary>No double needs more: sign, 21 digits, point and leading zeros, or exponent.</summary>
    internal const int MaxLength = 32;

    /// <summary>Writes a finite double; returns the number of bytes.</summary>
    internal static int Format(double value, Span<byte> destination)
    {
        if (value == 0)
        {
            destination[0] = (byte)'0';
            return 1;
        }

        int length = 0;
        if (value < 0)
        {
            destination[length++] = (byte)'-';
        }

        // .NET gives the shortest digits that read back, as ECMAScript does; only their layout differs.
        Span<byte> digits = stackalloc byte[MaxLength];
        int digitCount = Digits(Math.Abs(value), digits, out int pointAfter);
        return length + Lay(digits[..digitCount], pointAfter, destination[length..]);
    }

    /// <summary>The digits without leading or trailing zeros; the value is 0.digits times 10 to the power of <paramref name="pointAfter"/>.</summary>
    private static int Digits(double value, Span<byte> digits, out int pointAfter)
    {
        Span<byte> text = stackalloc byte[MaxLength];
        value.TryFormat(text, out int length, "R", CultureInfo.InvariantCulture);
        int mark = text[..length].IndexOf((byte)'E');
        int exponent = mark < 0 ? 0 : int.Parse(text[(mark + 1)..length], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
        ReadOnlySpan<byte> mantissa = text[..(mark < 0 ? length : mark)];
        int point = mantissa.IndexOf((byte)'.');
        pointAfter = exponent + (point < 0 ? mantissa.Length : point);

        int count = 0;
        foreach (byte c in mantissa)
        {
            if (c == (byte)'.')
            {
                continue;
            }

            if (count == 0 && c == (byte)'0')
            {
                // A leading zero, before or behind the point.
                pointAfter--;
                continue;
            }

            digits[count++] = c;
        }

        return digits[..count].TrimEnd((byte)'0').Length;
    }

    /// <summary>ECMA-262 steps by the position of the point: plain up to 21 digits and down to six zeros, else an exponent.</summary>
    private static int Lay(ReadOnlySpan<byte> digits, int pointAfter, Span<byte> destination)
    {
        if (pointAfter is > 21 or <= -6)
        {
            return LayExponent(digits, pointAfter - 1, destination);
        }

        int length = 0;
        if (pointAfter <= 0)
        {
            "0."u8.CopyTo(destination);
            destination.Slice(2, -pointAfter).Fill((byte)'0');
            length = 2 - pointAfter;
            digits.CopyTo(destination[length..]);
            return length + digits.Length;
        }

        for (int i = 0; i < Math.Max(digits.Length, pointAfter); i++)
        {
            if (i == pointAfter)
            {
                destination[length++] = (byte)'.';
            }

            destination[length++] = i < digits.Length ? digits[i] : (byte)'0';
        }

        return length;
    }

    private static int LayExponent(ReadOnlySpan<byte> digits, int exponent, Span<byte> destination)
    {
        int length = 0;
        destination[length++] = digits[0];
        if (digits.Length > 1)
        {
            destination[length++] = (byte)'.';
            digits[1..].CopyTo(destination[length..]);
            length += digits.Length - 1;
        }

        destination[length++] = (byte)'e';
        destination[length++] = exponent < 0 ? (byte)'-' : (byte)'+';
        Math.Abs(exponent).TryFormat(destination[length..], out int written, default, CultureInfo.InvariantCulture);
        return length + written;
    }
}
