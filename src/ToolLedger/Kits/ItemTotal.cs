using System.Globalization;
using ToolLedger.Records;

namespace ToolLedger.Kits;

/// <summary>How many items of one unit, added up over lines.</summary>
/// <remarks>Unlike a <see cref="Quantity"/> it may exceed 1,000,000. Immutable and thread-safe.</remarks>
/// <param name="Unit">The unit.</param>
/// <param name="Amount">How many, more than 0, with at most 3 decimals.</param>
public readonly record struct ItemTotal(Unit Unit, decimal Amount)
{
    /// <summary>Amount and unit, such as "27 each".</summary>
    /// <returns>Text for people.</returns>
    public override string ToString() => Amount.ToString("0.###", CultureInfo.InvariantCulture) + " " + Unit.Value;
}
