using System;

namespace ToolLedger.Calibration;

/// <summary>How due dates are read and what ends a calibration early; a part of the site policy.</summary>
/// <remarks>The default values are the P0 values of this library: examples, to be replaced by the organisation's own rules. Immutable and thread-safe.</remarks>
public sealed partial record CalibrationPolicy
{
    private const int MaxDueSoonDays = 366;
    private const int MaxDays = 366;

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

    /// <summary>From which share of a limit by cycles or hours on a tool is due soon.</summary>
    /// <value>Percent; 1 to 100. The default is 90.</value>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside the range.</exception>
    public int DueSoonUsePercent { get; init => field = Checked(value, 1, 100); } = 90;

    /// <summary>How a due date is read.</summary>
    /// <value>The default is <see cref="DueConvention.DayIncluded"/>.</value>
    /// <exception cref="ArgumentOutOfRangeException">The value is not one of the enumeration.</exception>
    public DueConvention Convention
    {
        get;
        init => field = Enum.IsDefined(value) ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "The convention must be one of the enumeration.");
    } = DueConvention.DayIncluded;

    /// <summary>From when an interval counts.</summary>
    /// <value>The default is <see cref="PeriodStart.Calibration"/>.</value>
    /// <exception cref="ArgumentOutOfRangeException">The value is not one of the enumeration.</exception>
    public PeriodStart Start
    {
        get;
        init => field = Enum.IsDefined(value) ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "The start must be one of the enumeration.");
    } = PeriodStart.Calibration;

    /// <summary>The longest storage before the first use that <see cref="PeriodStart.FirstUse"/> allows.</summary>
    /// <value>Months; 0 to 120. The default is 12.</value>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside the range.</exception>
    public int StorageMonths { get; init => field = Checked(value, 0, CalibrationRecord.MaxIntervalMonths); } = 12;

    /// <summary>For how many days after its due date a tool may still be used, without anybody's decision. No public directive grants such days to calibrations.</summary>
    /// <value>Days; 0 to 366. The default is 0.</value>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside the range.</exception>
    public int GraceDays { get; init => field = Checked(value, 0, MaxDays); }

    /// <summary>How many days past the due date an extension reaches at most; what it says beyond does not count.</summary>
    /// <value>Days; 0 to 366. The default is 30.</value>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside the range.</exception>
    public int ExtensionDays { get; init => field = Checked(value, 0, MaxDays); } = 30;

    /// <summary>The window of <see cref="DueConvention.FixedAnchor"/> for intervals below 12 months, as a share of their days.</summary>
    /// <value>Percent; 0 to 50. The default is 10.</value>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside the range.</exception>
    public int WindowPercent { get; init => field = Checked(value, 0, 50); } = 10;

    /// <summary>The window of <see cref="DueConvention.FixedAnchor"/> for intervals of 12 months and more.</summary>
    /// <value>Days; 0 to 180. The default is 30.</value>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside the range.</exception>
    public int WindowDays { get; init => field = Checked(value, 0, 180); } = 30;

    /// <summary>How many days the log of uses may be behind: uses of so many last days, today among them, need not be entered yet for a count to be known.</summary>
    /// <value>Days; 0 to 366. The default is 1: today.</value>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside the range.</exception>
    public int UseLogLagDays { get; init => field = Checked(value, 0, MaxDays); } = 1;

    /// <summary>Whether a passed check in service ends the suspension after a drop. The default is true.</summary>
    public bool CheckClearsDrop { get; init; } = true;

    /// <summary>Whether a passed check in service ends the suspension after a doubt. The default is true.</summary>
    public bool CheckClearsDoubt { get; init; } = true;

    /// <summary>Whether a passed check in service ends the suspension after an overload, damage, repair or adjustment. The default is false: it takes a calibration.</summary>
    public bool CheckClearsRepair { get; init; }

    /// <summary>Whether a passed check in service with values counts as the last known good state when a reverse trace starts. The default is false: only a calibration does, which gives the longer list.</summary>
    public bool CheckNarrowsTrace { get; init; }

    internal bool IsClearedByCheck(ConditionKind kind) => kind switch
    {
        ConditionKind.Dropped => CheckClearsDrop,
        ConditionKind.Doubted => CheckClearsDoubt,
        ConditionKind.SealBroken => false,
        _ => CheckClearsRepair,
    };

    internal string ConventionWord => Convention switch
    {
        DueConvention.MonthEnd => "end of month",
        DueConvention.FixedAnchor => "fixed anchor",
        _ => "printed day",
    };

    private static int Checked(int value, int min, int max) => value >= min && value <= max
        ? value
        : throw new ArgumentOutOfRangeException(nameof(value), value, $"The setting must be {min} to {max}.");
}
