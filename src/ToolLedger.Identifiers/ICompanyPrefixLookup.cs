using System;

namespace ToolLedger.Identifiers;

/// <summary>Tells how long the GS1 company prefix is at the beginning of a key. GS1 keys do not contain it, and no table of it
/// ships with this library.</summary>
public interface ICompanyPrefixLookup
{
    /// <summary>The length of the company prefix.</summary>
    /// <param name="digits">The digits of the key from the first digit of the prefix on, ASCII, at least six of them.</param>
    /// <returns>4 to 12 digits, or 0 when it is not known. Prefixes of 4 and 5 digits count as 6 digits in an EPC.</returns>
    int GetLength(ReadOnlySpan<byte> digits);
}
