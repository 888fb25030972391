using System;
using System.Collections.Generic;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Custody;

/// <summary>The checks of single values of custody entries.</summary>
internal static class CustodyChecks
{
    internal const int MaxLineNumber = 9999;
    internal const int MaxPieceCount = 999;
    internal const int MaxDescriptionLength = 200;

    internal static IReadOnlyList<int> LineNumbers(IReadOnlyList<int> numbers)
    {
        ArgumentNullException.ThrowIfNull(numbers);
        int[] copy = [.. numbers];
        return copy.Length <= KitManifest.MaxLineCount && Array.TrueForAll(copy, static number => number is >= 1 and <= MaxLineNumber)
            ? Array.AsReadOnly(copy)
            : throw new ArgumentException("Line numbers are 1 to 9999, at most 10,000 of them.", nameof(numbers));
    }

    internal static Quantity Some(Quantity quantity) =>
        quantity.Amount > 0 ? quantity : throw new ArgumentException("A quantity must be more than 0, with its unit.", nameof(quantity));
}
