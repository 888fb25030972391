namespace ToolLedger.Calibration;

/// <summary>How long or how often a tool may be used between two calibrations; whichever limit is reached first counts.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed record CalibrationInterval
{
    /// <summary>The most cycles or hours.</summary>
    public const decimal MaxUse = 100_000_000m;

    /// <summary>What ISO 6789 (2003, and parts 1 and 2 of 2017) is commonly quoted with for hand torque tools where the user has no procedure of his own: 12 months or 5,000 cycles.</summary>
    public static CalibrationInterval HandTorqueTool { get; } = new() { Months = 12, Cycles = 5000 };

    /// <summary>Calendar months, 1 to 120; null (the default) for no limit by date.</summary>
    public int? Months { get; init; }

    /// <summary>Cycles, such as clicks of a torque wrench: a whole number of 1 to 100,000,000; null (the default) for no limit by cycles.</summary>
    public decimal? Cycles { get; init; }

    /// <summary>Hours of use: above 0, at most 100,000,000; null (the default) for no limit by hours.</summary>
    public decimal? Hours { get; init; }

    internal bool IsEmpty => Months is null && Cycles is null && Hours is null;

    internal bool IsValid => Months is null or (>= 1 and <= CalibrationRecord.MaxIntervalMonths)
        && (Cycles is null || (Cycles is >= 1 and <= MaxUse && decimal.Truncate(Cycles.Value) == Cycles)) && Hours is null or (> 0 and <= MaxUse);

    internal decimal? LimitOf(UseMeasure measure) => measure == UseMeasure.Cycles ? Cycles : Hours;
}
