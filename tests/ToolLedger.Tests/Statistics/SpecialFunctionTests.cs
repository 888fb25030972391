using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Statistics;
using ToolLedger.Tests.Records;
using Xunit;

namespace ToolLedger.Tests.Statistics;

/// <summary>Every function against values computed with 50 digits (mpmath 1.3.0), to the relative error that its comment promises.</summary>
public sealed class SpecialFunctionTests
{
    private static readonly Dictionary<string, (double Error, Func<double[], double> Function)> Functions = new(StringComparer.Ordinal)
    {
        ["exp"] = (2.5e-16, static x => Elementary.Exp(x[0])),
        ["expm1"] = (1e-15, static x => Elementary.ExpMinus1(x[0])),
        ["log"] = (2.3e-16, static x => Elementary.Log(x[0])),
        ["log1p"] = (4.5e-16, static x => Elementary.LogOnePlus(x[0])),
        ["erf"] = (5e-16, static x => ErrorFunction.Erf(x[0])),
        ["erfc"] = (1e-15, static x => ErrorFunction.Complement(x[0])),
        ["normal-at-most"] = (1e-14, static x => NormalDistribution.AtMost(x[0])),
        ["normal-quantile"] = (1e-14, static x => NormalDistribution.Quantile(x[0])),
        ["log-gamma"] = (1e-14, static x => GammaFunction.LogGamma(x[0])),
        ["log-beta"] = (1e-14, static x => BetaFunction.LogBeta(x[0], x[1])),
        ["gamma-lower"] = (1e-12, static x => GammaFunction.Lower(x[0], x[1])),
        ["gamma-upper"] = (1e-12, static x => GammaFunction.Upper(x[0], x[1])),
        ["beta-lower"] = (1e-11, static x => BetaFunction.Lower(x[0], x[1], x[2])),
        ["beta-upper"] = (1e-11, static x => BetaFunction.Upper(x[0], x[1], x[2])),
        ["beta-quantile"] = (1e-12, static x => BetaFunction.Quantile(x[0], x[1], x[2])),
        ["binomial-exactly"] = (1e-12, static x => BinomialDistribution.Exactly((int)x[0], (int)x[1], x[2])),
    };

    public static TheoryData<string> Names => [.. Functions.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_function_is_as_close_as_its_comment_says(string name)
    {
        (double error, Func<double[], double> function) = Functions[name];
        string[][] rows = [.. Rows().Where(row => row[0] == name)];

        Assert.True(rows.Length >= 7, "Too few values of " + name);
        Assert.All(rows, row =>
        {
            double expected = Number(row[2]);
            double actual = function([.. row[1].Split(' ').Select(Number)]);
            double allowed = Math.Max(error * Math.Abs(expected), double.Epsilon);
            Assert.True(Math.Abs(actual - expected) <= allowed, $"{name}({row[1]}) = {actual:R}, not {expected:R}: off by {Math.Abs((actual / expected) - 1):E1}");
        });
    }

    [Fact]
    public void Every_row_of_the_file_belongs_to_a_function() => Assert.All(Rows(), row => Assert.Contains(row[0], Functions.Keys));

    [Fact]
    public void The_ends_of_the_ranges_are_what_the_comments_say()
    {
        Assert.Equal(double.PositiveInfinity, Elementary.Exp(710));
        Assert.Equal(0, Elementary.Exp(-746));
        Assert.Equal(double.NegativeInfinity, Elementary.Log(0));
        Assert.True(double.IsNaN(Elementary.Log(-1)));
        Assert.True(double.IsNaN(Elementary.Exp(double.NaN)));
        Assert.Equal(double.NegativeInfinity, Elementary.LogOnePlus(-1));
        Assert.Equal(0, ErrorFunction.Complement(28));
        Assert.Equal(2, ErrorFunction.Complement(-28));
        Assert.Equal(double.NegativeInfinity, NormalDistribution.Quantile(0));
        Assert.Equal(double.PositiveInfinity, NormalDistribution.Quantile(1));
        Assert.Equal(0, NormalDistribution.Quantile(0.5));
        Assert.Equal(1, NormalDistribution.Between(double.NegativeInfinity, double.PositiveInfinity));
        Assert.Equal(0, GammaFunction.Lower(3, 0));
        Assert.Equal(1, GammaFunction.Lower(3, double.PositiveInfinity));
        Assert.Equal(0, BetaFunction.Quantile(0, 2, 3));
        Assert.Equal(1, BetaFunction.Quantile(1, 2, 3));
        Assert.Equal(0, BinomialDistribution.LowerLimit(0, 5, 0.95));
        Assert.Equal(1, BinomialDistribution.UpperLimit(5, 5, 0.95));
        Assert.Throws<ArgumentOutOfRangeException>(() => NormalDistribution.Quantile(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => GammaFunction.LogGamma(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => BetaFunction.Lower(0.5, 0, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => BinomialDistribution.AtMost(6, 5, 0.5));
    }

    [Fact]
    public void An_integral_of_a_peak_that_one_rule_does_not_see_is_found_by_halving()
    {
        double area = Quadrature.Integrate(static x => NormalDistribution.Density((x - 0.3) / 0.001) / 0.001, 0, 1, 1e-13);

        Assert.Equal(1, area, 1e-12);
    }

    private static IEnumerable<string[]> Rows() => RepositoryFiles.ReadText("tests", "ToolLedger.Tests", "Statistics", "Data", "special-functions.tsv")
        .Split('\n', StringSplitOptions.RemoveEmptyEntries)
        .Skip(1)
        .Select(line => line.Split('\t'));

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
