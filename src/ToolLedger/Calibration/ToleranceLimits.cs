using System;
using System.Globalization;
using System.Runtime.InteropServices;

namespace ToolLedger.Calibration;

/// <summary>Between which values a measured quantity has to lie, ends included; one of the two may be open.</summary>
/// <remarks>Compared exactly, in decimals. The default value has no limit. Immutable and thread-safe.</remarks>
[StructLayout(LayoutKind.Auto)]
public readonly record struct ToleranceLimits
{
    private const decimal MaxPercent = 1_000_000;

    /// <summary>Makes limits.</summary>
    /// <param name="lower">The lowest value, within ±1e15; null for no limit below.</param>
    /// <param name="upper">The highest value, within ±1e15; null for no limit above.</param>
    /// <exception cref="ArgumentException">The upper limit lies below the lower one.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A limit is beyond 1e15.</exception>
    public ToleranceLimits(decimal? lower, decimal? upper)
    {
        if (upper < lower)
        {
            throw new ArgumentException("The upper limit must not lie below the lower one.", nameof(upper));
        }

        Conformity.RequireWithin(lower ?? 0, nameof(lower));
        Conformity.RequireWithin(upper ?? 0, nameof(upper));
        Lower = lower;
        Upper = upper;
    }

    /// <summary>The lowest value; null for no limit below.</summary>
    public decimal? Lower { get; }

    /// <summary>The highest value; null for no limit above.</summary>
    public decimal? Upper { get; }

    /// <summary>Half the distance of the limits; null if one of them is open.</summary>
    public decimal? Half => (Upper - Lower) / 2;

    /// <summary>Limits at a distance from a value.</summary>
    /// <param name="value">The value, within ±1e15.</param>
    /// <param name="half">The distance; 0 to 1e15.</param>
    /// <returns>The limits.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The distance is negative, or a number, or a limit, beyond 1e15.</exception>
    public static ToleranceLimits Around(decimal value, decimal half)
    {
        Conformity.RequireWithin(value, nameof(value));
        Conformity.RequireWithin(half, nameof(half));
        return half >= 0 ? new ToleranceLimits(value - half, value + half) : throw new ArgumentOutOfRangeException(nameof(half), half, "A tolerance must be 0 or more.");
    }

    /// <summary>Limits at a share of a value.</summary>
    /// <param name="value">The value, within ±1e15; its sign does not matter for the distance.</param>
    /// <param name="percent">The share in percent; 0 to 1,000,000.</param>
    /// <returns>The limits.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The share is outside its range, or the value or a limit beyond 1e15.</exception>
    public static ToleranceLimits Relative(decimal value, decimal percent)
    {
        Conformity.RequireWithin(value, nameof(value));
        return percent is >= 0 and <= MaxPercent
            ? Around(value, decimal.Abs(value) * percent / 100)
            : throw new ArgumentOutOfRangeException(nameof(percent), percent, "A share in percent must be 0 to 1,000,000.");
    }

    /// <summary>Whether a value lies within the limits.</summary>
    /// <param name="value">The value.</param>
    /// <returns>True if it does.</returns>
    public bool Contains(decimal value) => !(value < Lower) && !(value > Upper);

    /// <summary>The limits.</summary>
    /// <returns>Text for people, such as "96 to 104".</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Text(Lower)} to {Text(Upper)}");

    private static string Text(decimal? value) => value is null ? "no limit" : EventJson.Text(value);
}
