using System.Globalization;
using ToolLedger.Records;

namespace ToolLedger.Custody;

/// <summary>How one item stands in the log of a zone: what went in and what came out.</summary>
/// <param name="Item">The item.</param>
/// <param name="Unit">The unit it is counted in.</param>
/// <param name="In">How much went in.</param>
/// <param name="Out">How much came out.</param>
public readonly record struct ZoneBalance(string Item, Unit Unit, decimal In, decimal Out)
{
    /// <summary>What is still inside; below 0 where more came out than is on record.</summary>
    public decimal Open => In - Out;

    /// <summary>Whether nothing is open, in either direction.</summary>
    public bool IsBalanced => In == Out;

    /// <summary>Item and amounts.</summary>
    /// <returns>Text for people.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Item}: {In} in, {Out} out ({Unit.Value})");
}
