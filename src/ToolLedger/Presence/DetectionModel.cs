using System;
using System.Globalization;
using ToolLedger.Records;
using ToolLedger.Statistics;

namespace ToolLedger.Presence;

/// <summary>How tags that are there, and strays, answer: a zero-inflated beta-binomial model of the looks of a pass.</summary>
/// <remarks>
/// A tag that is there is obscured for a whole pass with a fixed probability; otherwise the share of looks with a read is drawn anew for each pass. A tag that is not there
/// is silent, or a stray nearby, which is drawn once for all passes of the same surroundings and reads at a low rate, drawn anew for each pass. Immutable and thread-safe; compared by value.
/// </remarks>
public sealed partial record DetectionModel
{
    /// <summary>Most looks of one pass.</summary>
    public const int MaxLooks = 65_535;

    /// <summary>The largest share of passes in which a tag that is there is obscured.</summary>
    public const decimal MaxObscuredShare = 0.9m;

    /// <summary>The smallest share of strays: without a floor one read would decide alone.</summary>
    public const decimal MinStrayShare = 0.000001m;

    /// <summary>Makes a model.</summary>
    /// <param name="obscuredShare">The probability that a tag that is there is obscured for a whole pass; 0 to 0.9, at most 9 decimals.</param>
    /// <param name="present">How a tag that is there and not obscured answers.</param>
    /// <param name="strayShare">The probability that a tag that is not there is near enough to be read; 0.000001 to 1, at most 9 decimals.</param>
    /// <param name="stray">How a stray answers.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of its range.</exception>
    /// <exception cref="ArgumentException">Strays answer better than tags that are there.</exception>
    public DetectionModel(decimal obscuredShare, BetaRate present, decimal strayShare, BetaRate stray)
    {
        ObscuredShare = Share(obscuredShare, 0, MaxObscuredShare, nameof(obscuredShare));
        Present = Rate(present, nameof(present));
        StrayShare = Share(strayShare, MinStrayShare, 1, nameof(strayShare));
        Stray = Rate(stray, nameof(stray));
        if (WhyRefused(present, stray) is { } why)
        {
            throw new ArgumentException(why.ToString(), nameof(stray));
        }
    }

    /// <summary>A model of an invented station (ours, no measurement): 5 % obscured, Beta(2.5, 2.5); 5 % strays, Beta(0.6, 8).</summary>
    public static DetectionModel Example { get; } = new(0.05m, new BetaRate(2.5m, 2.5m), 0.05m, new BetaRate(0.6m, 8));

    /// <summary>The probability that a tag that is there is obscured for a whole pass.</summary>
    public decimal ObscuredShare { get; }

    /// <summary>How a tag that is there and not obscured answers.</summary>
    public BetaRate Present { get; }

    /// <summary>The probability that a tag that is not there is a stray.</summary>
    public decimal StrayShare { get; }

    /// <summary>How a stray answers.</summary>
    public BetaRate Stray { get; }

    /// <summary>The logarithm of the probability of so many reads in a pass of a tag that is there.</summary>
    /// <param name="looks">Looks offered; 0 to 65,535.</param>
    /// <param name="reads">Reads; 0 to <paramref name="looks"/>.</param>
    /// <returns>0 or below.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A count is out of its range.</exception>
    public double LogPresent(int looks, int reads)
    {
        Check(looks, reads);
        double log = BetaBinomial.LogExactly(reads, looks, (double)Present.A, (double)Present.B);
        return reads > 0 ? log + Elementary.LogOnePlus(-(double)ObscuredShare) : LogSilent((double)ObscuredShare, log);
    }

    /// <summary>The logarithm of the probability of so many reads in a pass of a stray.</summary>
    /// <param name="looks">Looks offered; 0 to 65,535.</param>
    /// <param name="reads">Reads; 0 to <paramref name="looks"/>.</param>
    /// <returns>0 or below.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A count is out of its range.</exception>
    public double LogStray(int looks, int reads)
    {
        Check(looks, reads);
        return BetaBinomial.LogExactly(reads, looks, (double)Stray.A, (double)Stray.B);
    }

    /// <summary>The natural logarithm of the odds that a tag is there, at the model's own parameters.</summary>
    /// <param name="passes">What the passes showed. <see cref="PassLooks.IsDegraded"/> is not looked at.</param>
    /// <param name="absentShare">The probability before the session that it is not there; above 0, below 1.</param>
    /// <param name="isBounded">True to let a silent pass count for no more than a pass with one read, once the tag was read at all: then another read never lowers the odds.
    /// False for the exact posterior of the model, which zero inflation can make fall between no read and one.</param>
    /// <returns>A finite number.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A count or the share is out of its range.</exception>
    public double LogOdds(ReadOnlySpan<PassLooks> passes, double absentShare, bool isBounded)
    {
        if (!(absentShare is > 0 and < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(absentShare), absentShare, "The share must be above 0 and below 1.");
        }

        return LogOdds(passes, absentShare, isBounded, _ => this);
    }

    /// <summary>The probability that belongs to <see cref="LogOdds(ReadOnlySpan{PassLooks}, double, bool)"/>.</summary>
    /// <param name="passes">What the passes showed.</param>
    /// <param name="absentShare">The probability before the session that it is not there; above 0, below 1.</param>
    /// <param name="isBounded">As in <see cref="LogOdds(ReadOnlySpan{PassLooks}, double, bool)"/>.</param>
    /// <returns>The probability that the tag is there; 0 to 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A count or the share is out of its range.</exception>
    public double Posterior(ReadOnlySpan<PassLooks> passes, double absentShare, bool isBounded) => 1 / (1 + Elementary.Exp(-LogOdds(passes, absentShare, isBounded)));

    internal static Reason? WhyRefused(BetaRate present, BetaRate stray) => present.A >= stray.A && present.B <= stray.B ? null : new Reason(
        DetectionModelRules.StrayReadsBetter, ("presentA", Text(present.A)), ("presentB", Text(present.B)), ("strayA", Text(stray.A)), ("strayB", Text(stray.B)));

    internal static bool IsFirstOfItsSurroundings(ReadOnlySpan<PassLooks> passes, int index)
    {
        for (int i = 0; i < index; i++)
        {
            if (passes[i].Surroundings == passes[index].Surroundings)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>ln(share + (1 - share) e^log), also where the power is too small for a number.</summary>
    internal static double LogSilent(double share, double log)
    {
        if (share <= 0)
        {
            return log;
        }

        double first = Elementary.Log(share);
        double second = Elementary.LogOnePlus(-share) + log;
        return first > second ? first + Elementary.LogOnePlus(Elementary.Exp(second - first)) : second + Elementary.LogOnePlus(Elementary.Exp(first - second));
    }

    /// <summary>ln(1 - share + share e^log): silent because it is far away, or near and silent.</summary>
    internal static double LogAbsentSilent(double share, double log) => share >= 1 ? log : Elementary.LogOnePlus(share * Elementary.ExpMinus1(log));

    private static void Check(int looks, int reads)
    {
        if (looks is < 0 or > MaxLooks)
        {
            throw new ArgumentOutOfRangeException(nameof(looks), looks, "The looks of a pass are 0 to 65,535.");
        }

        if (reads < 0 || reads > looks)
        {
            throw new ArgumentOutOfRangeException(nameof(reads), reads, "The reads are 0 to the looks of the pass.");
        }
    }

    private static decimal Share(decimal value, decimal min, decimal max, string name) => value >= min && value <= max && decimal.Round(value, 9) == value
        ? value
        : throw new ArgumentOutOfRangeException(name, value, string.Create(CultureInfo.InvariantCulture, $"{name} must be {min} to {max} with at most 9 decimals."));

    private static BetaRate Rate(BetaRate rate, string name) => rate.IsInRange && decimal.Round(rate.A, 9) == rate.A && decimal.Round(rate.B, 9) == rate.B
        ? rate
        : throw new ArgumentOutOfRangeException(name, rate, "The weights of a rate must be 0.001 to 1,000,000 with at most 9 decimals.");

    private static string Text(decimal number) => number.ToString("0.#########", CultureInfo.InvariantCulture);
}
