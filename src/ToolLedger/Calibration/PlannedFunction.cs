using ToolLedger.Records;

namespace ToolLedger.Calibration;

/// <summary>One function of a tool, with its range and its own interval.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed record PlannedFunction
{
    /// <summary>The most days a check by the user holds.</summary>
    public const int MaxUserCheckDays = 3660;

    /// <summary>What the function is called, such as "torque, clockwise": 1 to 64 printable characters.</summary>
    public required string Name { get; init; }

    /// <summary>In what it measures, such as N·m; empty (the default) if not stated. Units are compared, never converted.</summary>
    public Unit Unit { get; init; }

    /// <summary>The lowest value of the range; null (the default) for no limit. For hand torque tools the range starts at the lowest marked value (ISO 6789:2017, from articles about it).</summary>
    public decimal? From { get; init; }

    /// <summary>The highest value of the range; null (the default) for no limit.</summary>
    public decimal? To { get; init; }

    /// <summary>The interval between calibrations; null (the default) if records say when the function is due.</summary>
    public CalibrationInterval? Interval { get; init; }

    /// <summary>For how many days a check by the user holds: 1 means that day only, which is how "before each use" is kept; null (the default) for none needed.</summary>
    /// <value>1 to 3,660.</value>
    public int? UserCheckDays { get; init; }
}
