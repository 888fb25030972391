using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>
/// Numbers of GS1 application identifiers, coded with their digit count so that 01 and 001 differ: 10000 x digits + number.
/// </summary>
internal static class Ai
{
    internal const int MaximumElements = 24;
    internal const int MaximumValue = 90;

    internal static int Of(int number, int digits) => (10_000 * digits) + number;

    internal static int DigitsOf(int ai) => ai / 10_000;

    internal static void Write(int ai, ref TextSink sink) => sink.AddDigits((ulong)(ai % 10_000), DigitsOf(ai));

    /// <summary>How many digits an application identifier has by its first two (TDS 2.3, s.15.3); 0 when none begins so.</summary>
    internal static int DigitCount(int firstTwo) => firstTwo switch
    {
        <= 4 or (>= 10 and <= 13) or (>= 15 and <= 17) or (>= 20 and <= 22) or 30 or 37 or (>= 90 and <= 99) => 2,
        (>= 23 and <= 25) or (>= 40 and <= 42) or 71 => 3,
        (>= 31 and <= 36) or 39 or 43 or 70 or 72 or (>= 80 and <= 82) => 4,
        _ => 0,
    };

    /// <summary>The length of the value where it is predefined by the first two digits, so that no separator follows
    /// (GS1 General Specifications, figure 7.8.5-2, from memory); 0 for a variable length.</summary>
    internal static int PredefinedLength(int firstTwo) => firstTwo switch
    {
        0 => 18,
        1 or 2 or 3 => 14,
        4 => 16,
        >= 11 and <= 19 => 6,
        20 => 2,
        >= 31 and <= 36 => 6,
        41 => 13,
        _ => 0,
    };

    internal static int FirstTwo(int ai)
    {
        int number = ai % 10_000;
        return DigitsOf(ai) switch { 2 => number, 3 => number / 10, _ => number / 100 };
    }

    /// <summary>Reads an application identifier that stands at the beginning of the text; 0 when none does.</summary>
    internal static int Read(ReadOnlySpan<byte> text)
    {
        if (text.Length < 2 || !DecimalText.TryRead(text.Slice(0, 2), out ulong two))
        {
            return 0;
        }

        int digits = DigitCount((int)two);
        return digits > 0 && text.Length >= digits && DecimalText.TryRead(text.Slice(0, digits), out ulong number)
            ? Of((int)number, digits)
            : 0;
    }
}
