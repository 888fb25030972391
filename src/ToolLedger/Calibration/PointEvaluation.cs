namespace ToolLedger.Calibration;

/// <summary>One point of a calibration with the limits it was held against and what is stated about it.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
/// <param name="Point">The point.</param>
/// <param name="Limits">The limits of the measured value.</param>
/// <param name="Decision">The statement with its risk.</param>
public sealed record PointEvaluation(CalibrationPoint Point, ToleranceLimits Limits, ConformityDecision Decision)
{
    /// <summary>The deviation in percent of the nominal value; null where that is 0.</summary>
    public decimal? DeviationPercent => Point.Nominal == 0 ? null : 100 * Point.Deviation / decimal.Abs(Point.Nominal);
}
