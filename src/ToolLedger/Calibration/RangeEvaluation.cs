using System;
using System.Collections.Generic;
using System.Linq;

namespace ToolLedger.Calibration;

/// <summary>The points of a calibration against limits: one decision a point, and the worst of them for the tool.</summary>
/// <remarks>
/// Made for hand torque tools, whose points lie at shares of the range; the permissible deviation is the caller's, since no limit of a standard is built in. Immutable and thread-safe.
/// </remarks>
public sealed class RangeEvaluation
{
    private RangeEvaluation(IReadOnlyList<PointEvaluation> points, IReadOnlyList<decimal> missing)
    {
        Points = points;
        Missing = missing;
    }

    /// <summary>The points, in the order handed in.</summary>
    public IReadOnlyList<PointEvaluation> Points { get; }

    /// <summary>The nominal values that were asked for and not measured.</summary>
    public IReadOnlyList<decimal> Missing { get; }

    /// <summary>The worst statement of all points; fail if a point is missing or there is none.</summary>
    public ConformityStatement Statement => Points.Count == 0 || Missing.Count > 0 ? ConformityStatement.Fail : Points.Max(static point => point.Decision.Statement);

    /// <summary>The lowest probability of conformance of all points; 0 if there is none.</summary>
    public double LowestProbability => Points.Count == 0 ? 0 : Points.Min(static point => point.Decision.ConformanceProbability);

    /// <summary>Evaluates points against limits that each carries.</summary>
    /// <param name="points">The points; one without limits is refused.</param>
    /// <param name="rule">The decision rule.</param>
    /// <returns>The evaluation.</returns>
    /// <exception cref="ArgumentException">A point has no limits, or the rule needs two and it has one.</exception>
    public static RangeEvaluation Of(IEnumerable<CalibrationPoint> points, DecisionRule rule)
    {
        ArgumentNullException.ThrowIfNull(points);
        ArgumentNullException.ThrowIfNull(rule);
        return new RangeEvaluation([.. points.Select(point => point.Lower is null && point.Upper is null
            ? throw new ArgumentException("A point without limits cannot be evaluated.", nameof(points))
            : Evaluate(point, new ToleranceLimits(point.Lower, point.Upper), rule))], []);
    }

    /// <summary>Evaluates points against a permissible deviation, and says which points of the range are missing.</summary>
    /// <param name="points">The points; limits they carry are not looked at.</param>
    /// <param name="permissiblePercent">The permissible deviation in percent of the nominal value; 0 or more. The caller's.</param>
    /// <param name="needed">The nominal values that have to be there, such as 20, 60 and 100 % of the range; none for any.</param>
    /// <param name="rule">The decision rule.</param>
    /// <returns>The evaluation.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The deviation is negative.</exception>
    public static RangeEvaluation Of(IEnumerable<CalibrationPoint> points, decimal permissiblePercent, IEnumerable<decimal> needed, DecisionRule rule)
    {
        ArgumentNullException.ThrowIfNull(points);
        ArgumentNullException.ThrowIfNull(needed);
        ArgumentNullException.ThrowIfNull(rule);
        PointEvaluation[] evaluated = [.. points.Select(point => Evaluate(point, ToleranceLimits.Relative(point.Nominal, permissiblePercent), rule))];
        return new RangeEvaluation(evaluated, [.. needed.Where(nominal => !Array.Exists(evaluated, point => point.Point.Nominal == nominal))]);
    }

    /// <summary>A point whose uncertainty is not stated passes at most conditionally: nothing is known about the risk.</summary>
    private static PointEvaluation Evaluate(CalibrationPoint point, ToleranceLimits limits, DecisionRule rule)
    {
        ConformityDecision decision = rule.Decide(MeasuredValue.FromExpanded(point.Measured, point.ExpandedUncertainty ?? 0, point.CoverageFactor), limits);
        bool isUnsure = point.ExpandedUncertainty is null && decision.Statement == ConformityStatement.Pass;
        return new PointEvaluation(point, limits, isUnsure ? decision with { Statement = ConformityStatement.ConditionalPass } : decision);
    }
}
