namespace ToolLedger.Identifiers;

/// <summary>
/// The character sets of the standard, tested eight characters at a time. All of it needs bytes below 80h; each answer has
/// the top bit of a byte set where the answer is yes.
/// </summary>
internal static class CharacterSets
{
    internal const ulong Ones = 0x0101010101010101UL;
    internal const ulong Tops = 0x8080808080808080UL;

    // Bit n is set where character n (and 64 + n) is in the set.
    private const ulong Set82Low = 0xFFFFFFE6_00000000UL;
    private const ulong Set82High = 0x07FFFFFE_87FFFFFEUL;
    private const ulong Set39Low = 0x03FFA008_00000000UL;
    private const ulong Set39High = 0x00000000_07FFFFFEUL;
    private const ulong CageLow = 0x03FF0000_00000000UL;
    private const ulong CageHigh = 0x00000000_07FF7DFEUL;
    private const ulong EscapedLow = 0xD000806C_00000000UL;

    /// <summary>Whether the character is in Table A-1: the invariant characters that a serial number may use.</summary>
    internal static bool Is82(uint character) => IsIn(character, Set82Low, Set82High);

    /// <summary>Whether the character is in Table G-1.</summary>
    internal static bool Is39(uint character) => IsIn(character, Set39Low, Set39High);

    /// <summary>Whether the character may stand in a CAGE code or DoDAAC.</summary>
    internal static bool IsCage(uint character) => IsIn(character, CageLow, CageHigh);

    /// <summary>Whether a URI must write the character as an escape (TDS 2.3, s.6.3; s.6.3.17 for the number sign).</summary>
    internal static bool IsEscaped(uint character) => IsIn(character, EscapedLow, 0);

    /// <summary>Which of eight characters are not in Table A-1. Zero bytes count as not in it.</summary>
    internal static ulong Outside82(ulong word) =>
        (~AtLeast(word, 0x21) | Between(word, 0x23, 0x24) | Between(word, 0x40, 0x40) | Between(word, 0x5B, 0x5E)
            | Between(word, 0x60, 0x60) | AtLeast(word, 0x7B)) & Tops;

    /// <summary>Which of eight characters are not in Table G-1. Zero bytes count as not in it.</summary>
    internal static ulong Outside39(ulong word) =>
        ~(Between(word, 0x23, 0x23) | Between(word, 0x2D, 0x2D) | Between(word, 0x2F, 0x39) | Between(word, 0x41, 0x5A)) & Tops;

    /// <summary>Which of eight characters may not stand in a CAGE code. Zero bytes count as not in it.</summary>
    internal static ulong OutsideCage(ulong word) =>
        ~(Between(word, 0x30, 0x39) | Between(word, 0x41, 0x48) | Between(word, 0x4A, 0x4E) | Between(word, 0x50, 0x5A)) & Tops;

    /// <summary>Which of eight characters are decimal digits.</summary>
    internal static ulong Digits(ulong word) => Between(word, 0x30, 0x39) & Tops;

    /// <summary>Which of eight characters are dots.</summary>
    internal static ulong Dots(ulong word) => Between(word, 0x2E, 0x2E) & Tops;

    /// <summary>Which of eight characters are number signs.</summary>
    internal static ulong NumberSigns(ulong word) => Between(word, 0x23, 0x23) & Tops;

    /// <summary>Which of eight characters a URI must escape.</summary>
    internal static ulong Escaped(ulong word) =>
        (Between(word, 0x22, 0x23) | Between(word, 0x25, 0x26) | Between(word, 0x2F, 0x2F) | Between(word, 0x3C, 0x3C)
            | Between(word, 0x3E, 0x3F)) & Tops;

    /// <summary>Which of eight bytes are zero.</summary>
    internal static ulong Zeros(ulong word) => ~(word + (0x7F * Ones)) & Tops;

    private static ulong AtLeast(ulong word, uint lowest) => word + ((0x80 - lowest) * Ones);

    private static ulong Between(ulong word, uint lowest, uint highest) => AtLeast(word, lowest) & ~AtLeast(word, highest + 1);

    private static bool IsIn(uint character, ulong low, ulong high) =>
        character < 128 && (((character < 64 ? low : high) >> (int)(character & 63)) & 1) != 0;
}
