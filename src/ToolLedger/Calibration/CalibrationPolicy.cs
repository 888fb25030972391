using System;

namespace ToolLedger.Calibration;

/// <summary>How due dates are read; a part of the site policy.</summary>
/// <remarks>The default values are the P0 values of this library: examples, to be replaced by the organisation's own rules. Immutable and thread-safe.</remarks>
public sealed partial record CalibrationPolicy
{
    private const int MaxDueSoonDays = 366;

    /// <summary>The default values (P0).</summary>
    public static CalibrationPolicy Default { get; } = new();

    /// <summary>How many days before the last day of validity a tool is due soon. 0 means: on the last day only.</summary>
    /// <value>Days; 0 to 366. The default is 30.</value>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside the range.</exception>
    public int DueSoonDays
    {
        get;
        init => field = value is >= 0 and <= MaxDueSoonDays ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "The days of notice must be 0 to 366.");
    } = 30;

    /// <summary>How a due date is read.</summary>
    /// <value>The default is <see cref="DueConvention.DayIncluded"/>.</value>
    /// <exception cref="ArgumentOutOfRangeException">The value is not one of the enumeration.</exception>
    public DueConvention Convention
    {
        get;
        init => field = Enum.IsDefined(value) ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "The convention must be one of the enumeration.");
    } = DueConvention.DayIncluded;
}
