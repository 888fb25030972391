using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Presence;
using ToolLedger.Statistics;

namespace ToolLedger.Tests.Presence.Proof;

/// <summary>
/// An invented world in which rules can be compared exactly: 20 tools, 1 % absent, two passes of 20 looks, 5 % covered, Beta(2.5, 2.5); 5 % of what is absent is a stray, once per tag, Beta(0.6, 8).
/// A rule is what it accounts for of all that may be read in the two passes.
/// </summary>
internal static class CurveWorld
{
    public const int Lines = 20;
    public const int Looks = 20;
    private const double Absent = 0.01;

    private static readonly double[] There = [.. Enumerable.Range(0, Looks + 1).Select(static reads => Elementary.Exp(DetectionModel.Example.LogPresent(Looks, reads)))];
    private static readonly double[] Stray = [.. Enumerable.Range(0, Looks + 1).Select(static reads => Elementary.Exp(DetectionModel.Example.LogStray(Looks, reads)))];

    /// <summary>The rule that asks for so many reads in so many passes.</summary>
    public static CurvePoint Counting(int reads, int passes) => Of(Pairs().Where(pair => pair.First + pair.Second >= reads && int.Sign(pair.First) + int.Sign(pair.Second) >= passes));

    public static CurvePoint Of(StatedRiskPolicy policy) => Of(Pairs().Where(pair => Decide(policy, pair).State == PresenceState.Accounted));

    /// <summary>What a policy reaches at every limit it may be given, from the strictest on.</summary>
    public static CurvePoint[] Curve(StatedRiskPolicy policy) => Steps(pair => Decide(policy, pair).Risk);

    /// <summary>What no rule can beat: outcomes in the order of the model's own likelihoods, without a bound (Neyman and Pearson, 1933).</summary>
    public static CurvePoint[] Best() => Steps(static pair => Math.Round(Elementary.Log(Stray[pair.First] * Stray[pair.Second] / (There[pair.First] * There[pair.Second])), 9));

    /// <summary>The share that stays open at exactly this error, on the line between two neighbouring points of a curve.</summary>
    public static double OpenAt(CurvePoint[] curve, double error)
    {
        CurvePoint before = new(0, 0);
        foreach (CurvePoint point in curve)
        {
            if (point.Error > error)
            {
                // So much of the step as keeps the error: (falsely + part x f) = error x (falsely + rightly + part x (f + r)).
                double f = point.Falsely - before.Falsely, r = point.Rightly - before.Rightly;
                double part = ((error * (before.Falsely + before.Rightly)) - before.Falsely) / (f - (error * (f + r)));
                return 1 - ((before.Rightly + (part * r)) / (1 - Absent));
            }

            before = point;
        }

        return before.Open;
    }

    /// <summary>The point of a curve that errs no oftener than this and leaves least open.</summary>
    public static CurvePoint Within(CurvePoint[] curve, double error) => curve.Where(point => point.Error <= error * (1 + 1e-12)).DefaultIfEmpty(new(0, 0)).Last();

    private static CurvePoint[] Steps(Func<(int First, int Second), double> risk)
    {
        var points = new List<CurvePoint>();
        CurvePoint sum = new(0, 0);
        foreach (var group in Pairs().Where(static pair => pair.First + pair.Second > 0).GroupBy(risk).OrderBy(static group => group.Key))
        {
            CurvePoint step = Of(group);
            sum = new CurvePoint(sum.Falsely + step.Falsely, sum.Rightly + step.Rightly);
            points.Add(sum);
        }

        return [.. points];
    }

    private static CurvePoint Of(IEnumerable<(int First, int Second)> accounted)
    {
        (double falsely, double rightly) = (0, 0);
        foreach ((int first, int second) in accounted)
        {
            falsely += Absent * (double)DetectionModel.Example.StrayShare * Stray[first] * Stray[second];
            rightly += (1 - Absent) * There[first] * There[second];
        }

        return new CurvePoint(falsely, rightly);
    }

    private static PresenceDecision Decide(StatedRiskPolicy policy, (int First, int Second) pair) => policy.Decide([new(Looks, pair.First), new(Looks, pair.Second)], Lines);

    private static IEnumerable<(int First, int Second)> Pairs() => Enumerable.Range(0, Looks + 1).SelectMany(static first => Enumerable.Range(0, Looks + 1).Select(second => (first, second)));

    /// <summary>Of all tools, the share that is accounted for and not there, and the share that is accounted for and there.</summary>
    internal readonly record struct CurvePoint(double Falsely, double Rightly)
    {
        /// <summary>The share of what is accounted for that is not there.</summary>
        public double Error => Falsely == 0 ? 0 : Falsely / (Falsely + Rightly);

        /// <summary>The share of the tools that are there and stay open.</summary>
        public double Open => 1 - (Rightly / (1 - Absent));
    }
}
