using System;
using System.Globalization;

namespace ToolLedger.Records;

/// <summary>How many of which unit, such as 6 each or 1 spool.</summary>
/// <remarks>
/// Two quantities are equal when amount and unit are equal; units are never converted. The default value is 0 without a
/// unit and means "not stated". Immutable and thread-safe.
/// </remarks>
public readonly record struct Quantity
{
    /// <summary>The largest amount.</summary>
    public const decimal MaxAmount = 1_000_000m;

    /// <summary>The most decimals an amount may have.</summary>
    public const int MaxDecimalCount = 3;

    /// <summary>Makes a quantity.</summary>
    /// <param name="amount">0 to 1,000,000, at most 3 decimals.</param>
    /// <param name="unit">The unit; not empty.</param>
    /// <exception cref="ArgumentOutOfRangeException">The amount is outside the range or has more decimals.</exception>
    /// <exception cref="ArgumentException">The unit is empty.</exception>
    public Quantity(decimal amount, Unit unit)
    {
        if (!IsAmount(amount))
        {
            throw new ArgumentOutOfRangeException(nameof(amount), amount, "An amount is 0 to 1,000,000 with at most 3 decimals.");
        }

        if (unit.IsEmpty)
        {
            throw new ArgumentException("A quantity needs a unit.", nameof(unit));
        }

        // Without trailing zeros, so that equal quantities are written alike.
        Amount = amount / 1.0000000000000000000000000000m;
        Unit = unit;
    }

    /// <summary>The amount, 0 to 1,000,000.</summary>
    public decimal Amount { get; }

    /// <summary>The unit; empty for the default value.</summary>
    public Unit Unit { get; }

    /// <summary>Amount and unit.</summary>
    /// <returns>Text for people, such as "6 each".</returns>
    public override string ToString() => Unit.IsEmpty
        ? Amount.ToString(CultureInfo.InvariantCulture)
        : string.Create(CultureInfo.InvariantCulture, $"{Amount} {Unit.Value}");

    internal static bool IsAmount(decimal amount) =>
        amount is >= 0 and <= MaxAmount && decimal.Round(amount, MaxDecimalCount) == amount;
}
