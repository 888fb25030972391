namespace ToolLedger.Calibration;

/// <summary>One measured point of a calibration or check: what was set or shown, what the standard found, and between which limits it should lie.</summary>
/// <remarks>All values are in the unit of the function. Immutable and thread-safe.</remarks>
public sealed record CalibrationPoint
{
    /// <summary>The most points of one list.</summary>
    public const int MaxCount = 200;

    internal const decimal UsualCoverage = 2;

    /// <summary>What the tool was set to, or showed.</summary>
    public required decimal Nominal { get; init; }

    /// <summary>What the standard found.</summary>
    public required decimal Measured { get; init; }

    /// <summary>The lowest permissible measured value; null (the default) if there is no limit below.</summary>
    public decimal? Lower { get; init; }

    /// <summary>The highest permissible measured value; null (the default) if there is no limit above.</summary>
    public decimal? Upper { get; init; }

    /// <summary>The expanded uncertainty U of the measured value, 0 or more; null (the default) if not stated.</summary>
    public decimal? ExpandedUncertainty { get; init; }

    /// <summary>The coverage factor k of U: above 0, at most 10. The default is 2, about 95 % for a normal distribution.</summary>
    public decimal CoverageFactor { get; init; } = UsualCoverage;

    /// <summary>Measured less nominal: what the tool delivers above what it says.</summary>
    public decimal Deviation => Measured - Nominal;

    /// <summary>Whether the measured value lies within the limits, their ends included, uncertainty left aside; null if there are none.</summary>
    public bool? IsWithinLimits => Lower is null && Upper is null ? null : !(Measured < Lower) && !(Measured > Upper);
}
