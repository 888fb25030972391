using System.Collections.Generic;
using ToolLedger.Statistics;

namespace ToolLedger.Presence;

/// <summary>How well strays may answer at most, by what was heard of them: the upper end of the one-sided 95 % profile-likelihood interval of their mean rate.</summary>
/// <remarks>
/// The likelihood is that of the passes of strays that were heard and of the sessions in which a tag that was not there was silent, with the priors of the learner and the learned share; how much the rate varies is
/// whatever makes each mean likeliest. The limit is half the 90 % quantile of chi-square with one degree of freedom, 2.705543 (Wilks; value from memory), so that a small sample is trusted little.
/// </remarks>
internal sealed class StrayRateBound(IReadOnlyList<KeyValuePair<(int Looks, int Reads), double>> heard, KeyValuePair<PassKey, double>[] quiet, double share)
{
    private const double Drop = 2.705543 / 2;
    private const double LowestSum = 1e-2;
    private const double HighestSum = 1e5;
    private const double HighestMean = 1 - 1e-6;
    private const int MeanSteps = 24;
    private const int SumSteps = 30;

    // One term of the likelihood, in the units of work of the learner.
    private const int WorkOfPass = 8;

    // The golden section.
    private const double Part = 0.6180339887498949;

    /// <summary>The largest mean that is still believed.</summary>
    /// <param name="likeliest">The likeliest rate.</param>
    /// <param name="work">What may be spent; at 0 or below the answer is not to be used.</param>
    public double MeanAtMost((double A, double B) likeliest, ref long work)
    {
        double low = likeliest.A / (likeliest.A + likeliest.B), high = HighestMean;
        double least = Log(likeliest.A, likeliest.B, ref work) - Drop;
        if (low >= high || Log(At(high, ref work), ref work) >= least)
        {
            return 1;
        }

        for (int step = 0; step < MeanSteps && work > 0; step++)
        {
            double middle = (low + high) / 2;
            (low, high) = Log(At(middle, ref work), ref work) >= least ? (middle, high) : (low, middle);
        }

        return high;
    }

    /// <summary>The likeliest rate of a mean.</summary>
    public (double A, double B) At(double mean, ref long work)
    {
        double low = Elementary.Log(LowestSum), high = Elementary.Log(HighestSum);
        double left = high - (Part * (high - low)), right = low + (Part * (high - low));
        double ofLeft = LogOfSum(mean, left, ref work), ofRight = LogOfSum(mean, right, ref work);
        for (int step = 0; step < SumSteps && work > 0; step++)
        {
            if (ofLeft >= ofRight)
            {
                (high, right, ofRight) = (right, left, ofLeft);
                left = high - (Part * (high - low));
                ofLeft = LogOfSum(mean, left, ref work);
            }
            else
            {
                (low, left, ofLeft) = (left, right, ofRight);
                right = low + (Part * (high - low));
                ofRight = LogOfSum(mean, right, ref work);
            }
        }

        double sum = Elementary.Exp((low + high) / 2);
        return (mean * sum, (1 - mean) * sum);
    }

    private double LogOfSum(double mean, double logSum, ref long work)
    {
        double sum = Elementary.Exp(logSum);
        return Log(mean * sum, (1 - mean) * sum, ref work);
    }

    private double Log((double A, double B) rate, ref long work) => Log(rate.A, rate.B, ref work);

    private double Log(double a, double b, ref long work)
    {
        work -= WorkOfPass * (heard.Count + (PassKey.MaxPasses * (long)quiet.Length));

        // The prior of LookCells.Fit.
        double log = (0.5 * Elementary.Log(a)) + (0.5 * Elementary.Log(b)) - Elementary.Log(a + b) - Elementary.Log(1 + a + b);
        for (int i = 0; i < heard.Count; i++)
        {
            ((int looks, int reads), double weight) = heard[i];
            log += weight * BetaBinomial.LogExactly(reads, looks, a, b);
        }

        foreach ((PassKey key, double count) in quiet)
        {
            double silence = 0;
            for (int i = 0; i < key.Count; i++)
            {
                silence += BetaBinomial.LogExactly(0, key.LooksOf(i), a, b);
            }

            double chance = 1 - share + (share * Elementary.Exp(silence));
            log += chance > 0 ? count * Elementary.Log(chance) : count * silence;
        }

        return log;
    }
}
