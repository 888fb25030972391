using System;
using System.Globalization;
using System.Linq;
using System.Text.Json;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;
using ToolLedger.Calibration;
using ToolLedger.Tests.Statistics;
using Xunit;

namespace ToolLedger.Tests.Calibration;

/// <summary>Conformity and risk: worked examples of JCGM 106, ILAC-G8 and Z540.3 practice (the source of each stands in the file), an independent library, and what always holds.</summary>
public sealed class ConformityTests
{
    private static readonly VectorFile Vectors = new("tests", "ToolLedger.Tests", "Calibration", "Data", "calibration.json");

    [Fact]
    public void Conformance_probability() => Assert.All(Vectors.Of("conformance_probability"), static vector => VectorFile.Close(vector, Conformity.Probability(
        new MeasuredValue(Decimal(vector, "estimate")!.Value, Decimal(vector, "u")!.Value), new ToleranceLimits(Decimal(vector, "lower"), Decimal(vector, "upper")))));

    [Fact]
    public void Guarded_rejection_limit() => Assert.All(Vectors.Of("guarded_rejection_limit_relative_u"), static vector => VectorFile.Close(vector,
        Conformity.GuardedRejectionLimit(Number(vector, "limit"), Number(vector, "relative_u"), Number(vector, "confidence"))));

    [Fact]
    public void Risk_at_the_acceptance_limit() => Assert.All(Vectors.Of("pfa_at_acceptance_limit"), static vector => VectorFile.Close(vector,
        Conformity.RiskAtAcceptanceLimit(Number(vector, "guard_band_over_U"), Number(vector, "k"))));

    [Fact]
    public void Non_binary_statement() => Assert.All(Vectors.Of("ilac_g8_nonbinary"), static vector =>
    {
        decimal u = Decimal(vector, "U")!.Value;
        var rule = new DecisionRule { GuardBand = GuardBandKind.ExpandedUncertainty, Factor = Decimal(vector, "w_over_U")!.Value, IsNonBinary = true };
        ConformityDecision decision = rule.Decide(MeasuredValue.FromExpanded(Decimal(vector, "measured")!.Value, u, 2), new ToleranceLimits(Decimal(vector, "lower"), Decimal(vector, "upper")));

        Assert.Equal(vector.GetProperty("expected").GetString(), decision.Statement switch
        {
            ConformityStatement.Pass => "pass",
            ConformityStatement.ConditionalPass => "conditional_pass",
            ConformityStatement.ConditionalFail => "conditional_fail",
            _ => "fail",
        });
    });

    [Fact]
    public void Share_in_tolerance() => Assert.All(Vectors.Of("in_tolerance_probability"), static vector =>
        VectorFile.Close(vector, GlobalRisk.InTolerance(Number(vector, "sigma"), Number(vector, "tolerance_half"))));

    [Fact]
    public void Risks_from_ratio_and_reliability() => Assert.All(Vectors.Of("pfa_pfr_from_tur_eopr"), static vector =>
    {
        double share = Number(vector, "eopr_true");
        GlobalRisk risk = GlobalRisk.OfRatio(Number(vector, "tur"), share, Number(vector, "acceptance_over_tolerance"));
        VectorFile.Close(vector, risk.FalseAccept, "pfa");
        VectorFile.Close(vector, risk.FalseReject, "pfr");
        VectorFile.Close(vector, GlobalRisk.DeviationFor(share), "sigma_over_L");
    });

    [Fact]
    public void Risks_from_spread_and_uncertainty() => Assert.All(Vectors.Of("global_risks"), static vector =>
    {
        GlobalRisk risk = GlobalRisk.Of(Number(vector, "sigma_process"), Number(vector, "u_measure"), Number(vector, "tolerance_half"), Number(vector, "acceptance_half"));
        VectorFile.Close(vector, risk.FalseAccept, "pfa");
        VectorFile.Close(vector, risk.FalseReject, "pfr");
    });

    [Fact]
    public void Worst_false_acceptance() => Assert.All(Vectors.Of("worst_case_pfa"), static vector =>
        VectorFile.Close(vector, GlobalRisk.WorstFalseAccept(Number(vector, "tur"), Number(vector, "acceptance_over_tolerance"))));

    [Fact]
    public void Managed_guard_band() => Assert.All(Vectors.Of("z540_method6_guard_band"), static vector =>
    {
        double ratio = Number(vector, "tur");
        decimal width = WidthOf(GuardBandKind.ManagedRisk, ratio);
        VectorFile.Close(vector, (double)width * ratio, "multiplier");
        VectorFile.Close(vector, 1 - (double)width, "acceptance_over_tolerance");
        VectorFile.Close(vector, GlobalRisk.WorstFalseAccept(ratio, 1 - (double)width), "worst_case_pfa");
    });

    [Fact]
    public void Root_difference_guard_band() => Assert.All(Vectors.Of("rss_guard_band"), static vector =>
        VectorFile.Close(vector, 1 - (double)WidthOf(GuardBandKind.RootDifference, Number(vector, "tur"))));

    [Fact]
    public void Test_uncertainty_ratio() => Assert.All(Vectors.Of("tur"), static vector => VectorFile.Close(vector,
        Conformity.TestUncertaintyRatio(ToleranceLimits.Around(0, Decimal(vector, "tolerance_half")!.Value), Decimal(vector, "U95")!.Value)));

    // The claim of the managed rule, for every ratio it is used at: the worst case stays below 2 %.
    [Fact]
    public void The_managed_guard_band_does_what_it_claims()
    {
        for (double ratio = 1; ratio <= 6; ratio += 0.25)
        {
            Assert.InRange(GlobalRisk.WorstFalseAccept(ratio, 1 - (double)WidthOf(GuardBandKind.ManagedRisk, ratio)), 0.005, 0.02);
        }
    }

    // The integrals and quantiles over a grid against MathNet.Numerics 5.0.0, which shares no code with them.
    [Fact]
    public void Risks_agree_with_an_independent_library_over_a_grid()
    {
        foreach (double s in (double[])[0.1, 0.3, 0.5, 1, 2])
        {
            foreach (double u in (double[])[0.02, 0.1, 0.25, 0.5])
            {
                foreach (double a in (double[])[0.6, 0.9, 1, 1.1])
                {
                    GlobalRisk risk = GlobalRisk.Of(s, u, 1, a);
                    double Accepted(double x) => Normal.CDF(0, 1, (a - x) / u) - Normal.CDF(0, 1, (-a - x) / u);
                    double falseAccept = 2 * Sum(x => Normal.PDF(0, s, x) * Accepted(x), 1, 1 + (14 * u));
                    double falseReject = 2 * Sum(x => Normal.PDF(0, s, x) * (1 - Accepted(x)), 0, 1);
                    Assert.True(Math.Abs(risk.FalseAccept - falseAccept) < 1e-9, $"PFA {s} {u} {a}: {risk.FalseAccept} {falseAccept}");
                    Assert.True(Math.Abs(risk.FalseReject - falseReject) < 1e-9, $"PFR {s} {u} {a}: {risk.FalseReject} {falseReject}");
                }
            }
        }

        static double Sum(Func<double, double> f, double from, double to) =>
            Enumerable.Range(0, 64).Sum(k => GaussLegendreRule.Integrate(f, from + ((to - from) * k / 64), from + ((to - from) * (k + 1) / 64), 32));
    }

    [Property]
    public Property Risks_are_probabilities_and_agree_with_the_shares(PositiveInt spread, NonNegativeInt uncertainty, NonNegativeInt acceptance)
    {
        double s = 0.01 + (spread.Get % 400 / 100.0), u = uncertainty.Get % 200 / 100.0, a = acceptance.Get % 150 / 100.0;
        GlobalRisk risk = GlobalRisk.Of(s, u, 1, a);
        double good = GlobalRisk.InTolerance(s, 1), accepted = GlobalRisk.InTolerance(Math.Sqrt((s * s) + (u * u)), a);

        // Accepted = good and not rejected, or bad and accepted: the two risks and the two shares are tied.
        return (risk.FalseAccept is >= 0 and <= 1 && risk.FalseReject is >= 0 and <= 1
            && risk.FalseAccept <= 1 - good + 1e-12 && risk.FalseReject <= good + 1e-12
            && Math.Abs(accepted - (good - risk.FalseReject + risk.FalseAccept)) < 1e-10).ToProperty();
    }

    [Property]
    public Property A_narrower_acceptance_accepts_less_falsely_and_rejects_more(PositiveInt spread, PositiveInt uncertainty, NonNegativeInt acceptance, NonNegativeInt less)
    {
        double s = 0.01 + (spread.Get % 300 / 100.0), u = 0.01 + (uncertainty.Get % 100 / 100.0), a = acceptance.Get % 150 / 100.0;
        GlobalRisk wide = GlobalRisk.Of(s, u, 1, a), narrow = GlobalRisk.Of(s, u, 1, a * (less.Get % 100) / 100);

        return (narrow.FalseAccept <= wide.FalseAccept + 1e-13 && narrow.FalseReject >= wide.FalseReject - 1e-13).ToProperty();
    }

    [Property]
    public Property A_guard_band_never_makes_a_statement_better(int value, NonNegativeInt uncertainty, NonNegativeInt factor)
    {
        var measured = new MeasuredValue(100 + (value % 1000 / 100m), uncertainty.Get % 300 / 100m);
        ToleranceLimits limits = new(96, 104);
        var guarded = new DecisionRule { GuardBand = GuardBandKind.ExpandedUncertainty, Factor = factor.Get % 30 / 10m, IsNonBinary = true };
        ConformityDecision plain = DecisionRule.Simple.Decide(measured, limits), careful = guarded.Decide(measured, limits);

        return (plain.ConformanceProbability == careful.ConformanceProbability
            && (careful.Statement != ConformityStatement.Pass || plain.Statement == ConformityStatement.Pass)
            && (careful.Statement <= ConformityStatement.ConditionalPass) == (plain.Statement == ConformityStatement.Pass || careful.Statement == ConformityStatement.Pass)
            && careful.SpecificRisk is >= 0 and <= 1).ToProperty();
    }

    [Fact]
    public void A_torque_wrench_is_judged_at_the_points_of_its_range_by_the_callers_limits()
    {
        CalibrationPoint[] points =
        [
            new() { Nominal = 40, Measured = 40.6m, ExpandedUncertainty = 0.4m },
            new() { Nominal = 120, Measured = 118.9m, ExpandedUncertainty = 1.0m },
            new() { Nominal = 200, Measured = 192.5m, ExpandedUncertainty = 1.6m },
        ];

        RangeEvaluation evaluation = RangeEvaluation.Of(points, permissiblePercent: 4, needed: [40, 120, 200], DecisionRule.NonBinary);

        Assert.Equal([ConformityStatement.Pass, ConformityStatement.Pass, ConformityStatement.ConditionalPass], evaluation.Points.Select(static point => point.Decision.Statement));
        Assert.Equal([1.5m, -0.92m, -3.75m], evaluation.Points.Select(static point => decimal.Round(point.DeviationPercent!.Value, 2)));
        Assert.Equal(ConformityStatement.ConditionalPass, evaluation.Statement);
        Assert.Equal(ConformityStatement.Fail, RangeEvaluation.Of(points[..2], 4, [40, 120, 200], DecisionRule.NonBinary).Statement);
        Assert.Equal([200], RangeEvaluation.Of(points[..2], 4, [40, 120, 200], DecisionRule.NonBinary).Missing);
        Assert.Equal(ConformityStatement.Fail, RangeEvaluation.Of([], DecisionRule.Simple).Statement);
        Assert.Equal(ConformityStatement.ConditionalPass, RangeEvaluation.Of([points[0] with { ExpandedUncertainty = null }], 4, [], DecisionRule.Simple).Statement);
        Assert.Throws<ArgumentException>(() => RangeEvaluation.Of(points, DecisionRule.Simple));
    }

    private static decimal WidthOf(GuardBandKind kind, double ratio) =>
        new DecisionRule { GuardBand = kind }.WidthOf(MeasuredValue.FromExpanded(0, 1 / (decimal)ratio, 2), ToleranceLimits.Around(0, 1));

    private static double Number(JsonElement vector, string name) => VectorFile.Number(vector, name);

    private static decimal? Decimal(JsonElement vector, string name)
    {
        JsonElement value = vector.GetProperty("inputs").GetProperty(name);
        return value.ValueKind switch
        {
            JsonValueKind.String => decimal.Parse(value.GetString()!, CultureInfo.InvariantCulture),
            JsonValueKind.Number => value.GetDecimal(),
            _ => null,
        };
    }

    // Numbers at the ends of what a double can hold are answered with a probability or refused, and soon: never with a number that is none, and never by halving without an end.
    [Fact]
    public void Risks_of_extreme_numbers_are_probabilities_or_refused()
    {
        double[] extremes = [double.Epsilon, 1e-300, 1e-100, 1e-20, 1, 1e20, 1e100, 1e300, double.MaxValue, double.PositiveInfinity, double.NaN];
        int answered = 0;
        foreach ((double s, double u, double tolerance, double a) in from s in extremes from u in extremes.Prepend(0) from tolerance in extremes from a in extremes.Prepend(0) select (s, u, tolerance, a))
        {
            try
            {
                GlobalRisk risk = GlobalRisk.Of(s, u, tolerance, a);
                Assert.InRange(risk.FalseAccept, 0, 1);
                Assert.InRange(risk.FalseReject, 0, 1);
                answered++;
            }
            catch (ArgumentOutOfRangeException)
            {
                // Refused, with the argument named.
            }
        }

        Assert.True(answered > 500);
    }

    // Values up to 1e15 are decided on under every rule; what could leave the range of decimals on the way is refused by name.
    [Fact]
    public void Decisions_on_extreme_values_neither_overflow_nor_pass_without_a_ground()
    {
        const decimal Largest = 1_000_000_000_000_000m;
        decimal[] values = [-Largest, -1, 0, 0.0000000000000000000000000001m, 1, Largest];
        foreach (GuardBandKind band in Enum.GetValues<GuardBandKind>())
        {
            foreach ((decimal value, decimal u, decimal lower, decimal upper, bool isNonBinary) in
                from value in values from u in values where u >= 0 from lower in values from upper in values where upper >= lower from isNonBinary in (bool[])[false, true] select (value, u, lower, upper, isNonBinary))
            {
                ConformityDecision decision = new DecisionRule { GuardBand = band, Factor = 10, IsNonBinary = isNonBinary }.Decide(new MeasuredValue(value, u), new ToleranceLimits(lower, upper));
                Assert.InRange(decision.ConformanceProbability, 0, 1);
                Assert.True(decision.Statement != ConformityStatement.Pass || (value >= lower && value <= upper));
            }
        }

        Assert.Throws<ArgumentOutOfRangeException>(static () => new MeasuredValue(Largest + 1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(static () => new MeasuredValue(0, decimal.MaxValue));
        Assert.Throws<ArgumentOutOfRangeException>(static () => MeasuredValue.FromExpanded(0, 1, 0.0000000000000000000000000001m));
        Assert.Throws<ArgumentOutOfRangeException>(static () => new ToleranceLimits(decimal.MinValue, null));
        Assert.Throws<ArgumentOutOfRangeException>(static () => ToleranceLimits.Around(decimal.MaxValue, 1));
        Assert.Throws<ArgumentOutOfRangeException>(static () => ToleranceLimits.Relative(1, decimal.MaxValue));
    }
}
