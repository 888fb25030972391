using System;
using ToolLedger.Statistics;

namespace ToolLedger.Calibration;

/// <summary>How a measured value is held against limits: with which guard band, and in two or four statements.</summary>
/// <remarks>ISO/IEC 17025:2017 asks that the rule be agreed and named (from memory). Immutable and thread-safe.</remarks>
public sealed record DecisionRule
{
    private const decimal MaxFactor = 10;

    /// <summary>Simple acceptance in two statements: pass within the limits, fail outside.</summary>
    public static DecisionRule Simple { get; } = new();

    /// <summary>The non-binary statement of ILAC-G8:09/2019, 4.2.3, with a guard band as wide as U.</summary>
    public static DecisionRule NonBinary { get; } = new() { GuardBand = GuardBandKind.ExpandedUncertainty, IsNonBinary = true };

    /// <summary>The guard band. The default is <see cref="GuardBandKind.None"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not one of the enumeration.</exception>
    public GuardBandKind GuardBand { get; init => field = Enum.IsDefined(value) ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "The guard band must be one of the enumeration."); }

    /// <summary>The share r of U, for <see cref="GuardBandKind.ExpandedUncertainty"/>.</summary>
    /// <value>0 to 10. The default is 1.</value>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside the range.</exception>
    public decimal Factor { get; init => field = value is >= 0 and <= MaxFactor ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "The share must be 0 to 10."); } = 1;

    /// <summary>True for four statements, with conditional ones on both sides of a limit. The default is false.</summary>
    public bool IsNonBinary { get; init; }

    /// <summary>The width of the guard band.</summary>
    /// <param name="measured">The measured value; only its uncertainty counts.</param>
    /// <param name="limits">The limits; both are needed for the rules that ask for a TUR.</param>
    /// <returns>The width, 0 or more, in the unit of the value.</returns>
    /// <exception cref="ArgumentException">The rule needs two limits, and one is open.</exception>
    public decimal WidthOf(MeasuredValue measured, ToleranceLimits limits)
    {
        if (GuardBand == GuardBandKind.None || measured.StandardUncertainty == 0)
        {
            return 0;
        }

        if (GuardBand == GuardBandKind.ExpandedUncertainty)
        {
            return Factor * measured.U95;
        }

        if (limits.Half is not { } half)
        {
            throw new ArgumentException("This guard band needs a lower and an upper limit.", nameof(limits));
        }

        double ratio = (double)half / (double)measured.U95;
        double multiplier = GuardBand == GuardBandKind.ManagedRisk
            ? Math.Max(0, 1.04 - Elementary.Exp((0.38 * Elementary.Log(ratio)) - 0.54))
            : ratio <= 1 ? ratio : ratio * (1 - Math.Sqrt(1 - (1 / (ratio * ratio))));
        return (decimal)multiplier * measured.U95;
    }

    /// <summary>Decides about a measured value.</summary>
    /// <param name="measured">The measured value.</param>
    /// <param name="limits">The limits.</param>
    /// <returns>The statement, with the probability that the value conforms.</returns>
    /// <exception cref="ArgumentException">The rule needs two limits, and one is open.</exception>
    public ConformityDecision Decide(MeasuredValue measured, ToleranceLimits limits)
    {
        decimal width = WidthOf(measured, limits);
        decimal? lower = limits.Lower + width;
        decimal? upper = limits.Upper - width;
        bool isAccepted = !(measured.Value < lower) && !(measured.Value > upper);
        ConformityStatement statement = isAccepted ? ConformityStatement.Pass
            : !IsNonBinary ? ConformityStatement.Fail
            : limits.Contains(measured.Value) ? ConformityStatement.ConditionalPass
            : !(measured.Value < limits.Lower - width) && !(measured.Value > limits.Upper + width) ? ConformityStatement.ConditionalFail
            : ConformityStatement.Fail;
        return new ConformityDecision(statement, Conformity.Probability(measured, limits), width, lower, upper);
    }
}
