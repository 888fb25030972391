using System;

namespace ToolLedger.Identifiers;

/// <summary>How the length of a GS1 company prefix is found: given as a number, or looked up by the caller's own table.</summary>
/// <remarks>The default value gives none. Immutable; as safe for use by several threads as the look-up that it holds.</remarks>
public readonly record struct CompanyPrefixLength
{
    private readonly int _digits;
    private readonly ICompanyPrefixLookup? _lookup;

    private CompanyPrefixLength(int digits, ICompanyPrefixLookup? lookup)
    {
        _digits = digits;
        _lookup = lookup;
    }

    /// <summary>A length that is known.</summary>
    /// <param name="digits">4 to 12 digits; 4 and 5 count as 6.</param>
    /// <returns>The value.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The number is not 4 to 12.</exception>
    public static CompanyPrefixLength FromDigits(int digits) => digits is >= 4 and <= 12
        ? new CompanyPrefixLength(digits, null)
        : throw new ArgumentOutOfRangeException(nameof(digits), digits, "A company prefix has 4 to 12 digits.");

    /// <summary>A length that is looked up for each key.</summary>
    /// <param name="lookup">The look-up.</param>
    /// <returns>The value.</returns>
    /// <exception cref="ArgumentNullException">There is no look-up.</exception>
    public static CompanyPrefixLength FromLookup(ICompanyPrefixLookup lookup) =>
        new(0, lookup ?? throw new ArgumentNullException(nameof(lookup)));

    // 0 when it is not known, otherwise 6 to 12 or what the look-up made up.
    internal int For(ReadOnlySpan<byte> digits)
    {
        int length = _digits;
        if (_lookup is not null)
        {
            length = digits.Length >= 6 ? _lookup.GetLength(digits) : 0;
        }

        // Prefixes of four and five digits are taken as six (GS1 TDS 2.3, chapter 5).
        return length is 4 or 5 ? 6 : length;
    }
}
