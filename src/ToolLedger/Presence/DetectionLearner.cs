using System;
using System.Collections.Generic;
using System.Runtime.InteropServices;
using ToolLedger.Statistics;

namespace ToolLedger.Presence;

/// <summary>Learns a detection model from sessions whose truth people confirmed: one learner for each mounting class and station.</summary>
/// <remarks>
/// By expectation and maximisation over what is not seen (obscured or not, stray or not), with priors of Jeffreys' type. Only what was sighted or counted may be added, and no abnormal day: learning from
/// it would lower the bar for every later day. Learning is bounded: passes of tens of thousands of looks, or very many different ones, may not be fitted to the end. Then strays are taken for so many and so good that
/// reads account for nothing (<see cref="LearnedDetection.IsCutShort"/>). Not thread-safe.
/// </remarks>
public sealed class DetectionLearner
{
    private const int MaxRounds = 300;
    private const double Settled = 1e-7;

    // What learning one of the two rates may cost, in terms of a likelihood (ours): some seconds.
    private const long MostWork = 1L << 26;

    // The likelihood of a silent pass, compared with one such term.
    private const int WorkOfPass = 8;

    // A model to shrink to stands for passes of so many looks (ours): enough to show its shape.
    private const int LooksOfPrior = 20;
    private const double Confidence = 0.95;

    private readonly LookCells there = new();
    private readonly LookCells strays = new();
    private readonly Dictionary<PassKey, double> silent = [];
    private int passesThere, passesRead, sessionsAbsent, sessionsStray, leftOut;

    /// <summary>Adds a session in which a tag was certainly there.</summary>
    /// <param name="passes">Its passes, at most 6. A session with a degraded pass is left out, and counted.</param>
    /// <exception cref="ArgumentOutOfRangeException">There are too many passes, or a count is out of its range.</exception>
    public void AddThere(ReadOnlySpan<PassLooks> passes)
    {
        if (IsLeftOut(passes))
        {
            return;
        }

        foreach (PassLooks pass in passes)
        {
            if (pass.Looks > 0)
            {
                there.Add(pass.Looks, pass.Reads, 1);
                passesThere++;
                passesRead += pass.Reads > 0 ? 1 : 0;
            }
        }
    }

    /// <summary>Adds a session in which a tag was certainly not there, for instance since it was sighted elsewhere.</summary>
    /// <param name="passes">Its passes in unchanged surroundings, at most 6. A session with a degraded pass is left out, and counted.</param>
    /// <exception cref="ArgumentOutOfRangeException">There are too many passes, or a count is out of its range.</exception>
    public void AddAbsent(ReadOnlySpan<PassLooks> passes)
    {
        if (IsLeftOut(passes))
        {
            return;
        }

        sessionsAbsent++;
        bool isRead = false;
        foreach (PassLooks pass in passes)
        {
            isRead |= pass.Reads > 0;
        }

        if (!isRead)
        {
            CollectionsMarshal.GetValueRefOrAddDefault(silent, PassKey.Of(passes), out _) += 1;
            return;
        }

        sessionsStray++;
        foreach (PassLooks pass in passes)
        {
            if (pass.Looks > 0)
            {
                strays.Add(pass.Looks, pass.Reads, 1);
            }
        }
    }

    /// <summary>The likeliest model of those that are allowed. None is found where strays were read better, on average, than tags that were there.</summary>
    /// <param name="shrinkTo">The model of the class, for a tag with little history of its own; null for none.</param>
    /// <param name="shrinkPasses">How many passes that model counts for; 0 to 1,000,000. The default is 10 (ours).</param>
    /// <returns>What was learned.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="shrinkPasses"/> is out of its range.</exception>
    public LearnedDetection Learn(DetectionModel? shrinkTo = null, int shrinkPasses = 10) => Learn(shrinkTo, shrinkPasses, MostWork);

    internal LearnedDetection Learn(DetectionModel? shrinkTo, int shrinkPasses, long mostWork)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(shrinkPasses);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(shrinkPasses, 1_000_000);
        (double obscured, double a, double b) = LearnThere(shrinkTo, shrinkPasses, mostWork, out bool isThereCut);
        (double share, double strayA, double strayB) = LearnStrays(shrinkTo, shrinkPasses, mostWork, out double rateAtMost, out bool areStraysCut, out StrayRateBound? bound);
        var present = new BetaRate(Rounded(a), Rounded(b));
        var stray = new BetaRate(Rounded(strayA), Rounded(strayB));
        if (!areStraysCut && bound is not null)
        {
            stray = NoWorseThanBound(stray, present, shrinkTo is null || shrinkPasses == 0 ? rateAtMost : double.Min(rateAtMost, shrinkTo.Stray.Mean), bound, mostWork, out areStraysCut);
        }

        if (isThereCut || areStraysCut)
        {
            (share, stray) = (1, present);
        }
        else if (sessionsStray == 0 && (shrinkTo is null || shrinkPasses == 0))
        {
            // Nothing says how a stray answers. The cautious side: as well as a tag that is there, and as often as the bound allows.
            (share, stray) = (StrayShareAtMost, present);
        }
        else
        {
            // What is claimed hangs on the strays alone, so those are never made weaker than learned, and no fewer than the bound allows to say; below the share of the class only as far as it allows.
            share = double.Max(share, shrinkTo is null ? StrayShareAtMost : double.Min(StrayShareAtMost, (double)shrinkTo.StrayShare));
            (present, stray) = Allowed(present, stray);
        }

        Records.Reason? refused = DetectionModel.WhyRefused(present, stray);
        return new LearnedDetection
        {
            Model = refused is not null ? null : new DetectionModel(
                decimal.Round(decimal.Clamp((decimal)obscured, 0, DetectionModel.MaxObscuredShare), 9), present,
                decimal.Round(decimal.Clamp((decimal)share, DetectionModel.MinStrayShare, 1), 9), stray),
            Refused = refused,
            IsCutShort = isThereCut || areStraysCut,
            PassesThere = passesThere,
            PassesRead = passesRead,
            SessionsAbsent = sessionsAbsent,
            SessionsStray = sessionsStray,
            SessionsLeftOut = leftOut,
            ReadShareAtLeast = passesThere == 0 ? 0 : BinomialDistribution.LowerLimit(passesRead, passesThere, Confidence),
            StrayShareAtMost = StrayShareAtMost,
            StrayRateAtMost = areStraysCut ? 1 : rateAtMost,
        };
    }

    /// <summary>
    /// Where one of the two answers too steadily for an allowed model it is taken to vary more, at the same mean. For strays that is the cautious side: more of them are then read often. For tags that
    /// are there it costs open lines and claims nothing. Where strays are read better on average both stay, and are refused.
    /// </summary>
    private static (BetaRate Present, BetaRate Stray) Allowed(BetaRate present, BetaRate stray)
    {
        if (stray.Mean > present.Mean)
        {
            return (present, stray);
        }

        if (stray.A > present.A)
        {
            stray = new BetaRate(present.A, decimal.Clamp(decimal.Round(stray.B * present.A / stray.A, 9), present.B, BetaRate.MaxParameter));
        }
        else if (present.B > stray.B)
        {
            present = new BetaRate(decimal.Max(decimal.Round(present.A * stray.B / present.B, 9), stray.A), stray.B);
        }

        return (present, stray);
    }

    /// <summary>Strays are never taken to answer worse than the bound allows to say, nor, by the bound alone, better than tags that are there: that would refuse a model for want of strays.</summary>
    private static BetaRate NoWorseThanBound(BetaRate stray, BetaRate present, double mean, StrayRateBound bound, long work, out bool isCut)
    {
        isCut = false;
        double wanted = double.Min(mean, present.Mean);
        if (wanted <= stray.Mean)
        {
            return stray;
        }

        (double a, double b) = bound.At(wanted, ref work);
        isCut = work <= 0;
        return new BetaRate(Rounded(a), Rounded(b));
    }

    private double StrayShareAtMost => sessionsAbsent == 0 ? 1 : BinomialDistribution.UpperLimit(sessionsStray, sessionsAbsent, Confidence);

    private (double Obscured, double A, double B) LearnThere(DetectionModel? shrinkTo, int passes, long work, out bool isCut)
    {
        LookCells cells = With(there, shrinkTo is null ? null : shrinkTo.LogPresent, passes);
        double obscured = shrinkTo is null ? 0.05 : (double)shrinkTo.ObscuredShare;
        (double A, double B) rate = shrinkTo is null ? (1, 1) : ((double)shrinkTo.Present.A, (double)shrinkTo.Present.B);
        for (int round = 0; round < MaxRounds; round++)
        {
            double share = obscured, expected = 0;
            (double A, double B) from = rate;

            // Of a class without obscured passes none is, however small the other chance is.
            double OfObscured(int looks) => share <= 0 ? 0 : share / (share + ((1 - share) * Elementary.Exp(BetaBinomial.LogExactly(0, looks, from.A, from.B))));
            foreach (((int looks, int reads), double weight) in cells.All)
            {
                expected += reads == 0 ? weight * OfObscured(looks) : 0;
            }

            rate = cells.Fit(looks => 1 - OfObscured(looks), from, ref work);
            work -= 2 * WorkOfPass * cells.All.Count;
            obscured = (expected + 0.5) / (cells.Weight + 1);
            if (work <= 0 || (Math.Abs(obscured - share) < Settled && Near(rate.A, from.A) && Near(rate.B, from.B)))
            {
                break;
            }
        }

        isCut = work <= 0;
        return (obscured, rate.A, rate.B);
    }

    private (double Share, double A, double B) LearnStrays(DetectionModel? shrinkTo, int passes, long work, out double rateAtMost, out bool isCut, out StrayRateBound? bound)
    {
        double share = shrinkTo is null ? 0.05 : (double)shrinkTo.StrayShare;
        double prior = shrinkTo is null ? 0 : passes;
        KeyValuePair<PassKey, double>[] quiet = [.. silent];
        Array.Sort(quiet, static (left, right) => PassKey.Compare(left.Key, right.Key));
        (double A, double B) rate = shrinkTo is null ? (0.5, 5) : ((double)shrinkTo.Stray.A, (double)shrinkTo.Stray.B);
        for (int round = 0; round < MaxRounds; round++)
        {
            (double Share, double A, double B) from = (share, rate.A, rate.B);
            LookCells cells = With(strays, shrinkTo is null ? null : shrinkTo.LogStray, passes);
            double expected = sessionsStray;
            foreach ((PassKey key, double count) in quiet)
            {
                double log = 0;
                for (int i = 0; i < key.Count; i++)
                {
                    log += BetaBinomial.LogExactly(0, key.LooksOf(i), rate.A, rate.B);
                }

                // Where all are strays the silent ones are too, however small the chance of silence is.
                double near = share * Elementary.Exp(log);
                double weight = share >= 1 ? count : count * (near / (1 - share + near));
                expected += weight;
                for (int i = 0; i < key.Count; i++)
                {
                    cells.Add(key.LooksOf(i), 0, weight);
                }
            }

            // How strays answer is not known without one: silence has no say in it, and a fit would follow the prior alone.
            rate = sessionsStray == 0 && shrinkTo is not null ? rate : cells.Fit(static _ => 1, rate, ref work);
            share = shrinkTo is null ? (expected + 0.5) / (sessionsAbsent + 1) : (expected + (prior * (double)shrinkTo.StrayShare)) / (sessionsAbsent + Math.Max(prior, 1e-9));
            work -= WorkOfPass * ((PassKey.MaxPasses * (long)quiet.Length) + cells.All.Count);
            if (work <= 0 || (Math.Abs(share - from.Share) < Settled && Near(rate.A, from.A) && Near(rate.B, from.B)))
            {
                break;
            }
        }

        // Without a stray that was heard nothing bounds the rate.
        bound = sessionsStray == 0 ? null : new StrayRateBound(With(strays, shrinkTo is null ? null : shrinkTo.LogStray, passes).All, quiet, share);
        rateAtMost = bound is null || work <= 0 ? 1 : bound.MeanAtMost(rate, ref work);
        isCut = work <= 0;
        return (share, rate.A, rate.B);
    }

    /// <summary>The cells, with passes of another model added as its probabilities spread them.</summary>
    private static LookCells With(LookCells counted, Func<int, int, double>? logPrior, int passes)
    {
        var all = new LookCells();
        foreach (((int looks, int reads), double weight) in counted.All)
        {
            all.Add(looks, reads, weight);
        }

        for (int k = 0; logPrior is not null && passes > 0 && k <= LooksOfPrior; k++)
        {
            all.Add(LooksOfPrior, k, passes * Elementary.Exp(logPrior(LooksOfPrior, k)));
        }

        return all;
    }

    private bool IsLeftOut(ReadOnlySpan<PassLooks> passes)
    {
        if (passes.Length > PassKey.MaxPasses)
        {
            throw new ArgumentOutOfRangeException(nameof(passes), passes.Length, "At most 6 passes are weighed.");
        }

        bool isDegraded = false;
        foreach (PassLooks pass in passes)
        {
            if (pass.Looks is < 0 or > DetectionModel.MaxLooks || pass.Reads < 0 || pass.Reads > pass.Looks)
            {
                throw new ArgumentOutOfRangeException(nameof(passes), pass, "A pass has 0 to 65,535 looks and no more reads than looks.");
            }

            isDegraded |= pass.IsDegraded;
        }

        leftOut += isDegraded ? 1 : 0;
        return isDegraded;
    }

    private static decimal Rounded(double parameter) => decimal.Round(decimal.Clamp((decimal)parameter, BetaRate.MinParameter, BetaRate.MaxParameter), 9);

    private static bool Near(double value, double before) => Math.Abs(value - before) <= Settled * Math.Max(1, before);
}
