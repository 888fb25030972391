using System;
using ToolLedger.Statistics;

namespace ToolLedger.Presence;

/// <summary>Watches one tag over its sessions and says that it is fading before it fails: a Bernoulli CUSUM of passes in which it was there and not read.</summary>
/// <remarks>
/// A miss adds <see cref="Up"/> steps, a read takes one away, never below 0; at <see cref="Limit"/> the tag is to be qualified again (Reynolds and Stoumbos, Journal of Quality Technology 31, 1999; the
/// abstract). It proposes and accounts for nothing. Immutable and thread-safe.
/// </remarks>
public sealed record TagFadingWatch
{
    /// <summary>The largest limit.</summary>
    public const int MaxLimit = 1_000;

    /// <summary>Makes a watch.</summary>
    /// <param name="up">Steps up on a miss; 1 to 1,000.</param>
    /// <param name="limit">The sum at which the tag is fading; 1 to 1,000.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of its range.</exception>
    public TagFadingWatch(int up, int limit)
    {
        Up = up is >= 1 and <= MaxLimit ? up : throw new ArgumentOutOfRangeException(nameof(up), up, "The steps must be 1 to 1,000.");
        Limit = limit is >= 1 and <= MaxLimit ? limit : throw new ArgumentOutOfRangeException(nameof(limit), limit, "The limit must be 1 to 1,000.");
    }

    /// <summary>Steps up on a miss.</summary>
    public int Up { get; }

    /// <summary>The sum at which the tag is fading.</summary>
    public int Limit { get; }

    /// <summary>A watch for a change of the miss rate, with the steps rounded so that it is not slower than meant.</summary>
    /// <param name="usual">The usual share of passes without a read; above 0, below <paramref name="faded"/>.</param>
    /// <param name="faded">The share that is to be noticed; below 1.</param>
    /// <param name="falseAlarmMean">The fewest passes there may be on average until a tag that has not changed is called fading; 1 or more.</param>
    /// <returns>The watch with the lowest limit that keeps it; the largest limit where none does.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of its range.</exception>
    public static TagFadingWatch For(double usual, double faded, double falseAlarmMean)
    {
        if (!(falseAlarmMean >= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(falseAlarmMean), falseAlarmMean, "The mean number of passes must be 1 or more.");
        }

        double reference = Reference(usual, faded);
        int up = Math.Clamp((int)Math.Round(1 / reference) - 1, 1, MaxLimit);
        int low = 1, high = MaxLimit;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = RunLength.Mean(usual, up, middle) >= falseAlarmMean ? (low, middle) : (middle + 1, high);
        }

        return new TagFadingWatch(up, low);
    }

    /// <summary>The reference value r1/r2 of a Bernoulli CUSUM: -ln((1 - p1)/(1 - p0)) / ln(p1 (1 - p0) / (p0 (1 - p1))).</summary>
    /// <param name="usual">p0; above 0, below <paramref name="faded"/>.</param>
    /// <param name="faded">p1; below 1.</param>
    /// <returns>Between the two.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of its range.</exception>
    public static double Reference(double usual, double faded)
    {
        if (!(usual > 0 && usual < faded && faded < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(faded), faded, "The shares must be above 0 and below 1, and the one to be noticed above the usual one.");
        }

        return -Elementary.Log((1 - faded) / (1 - usual)) / Elementary.Log(faded * (1 - usual) / (usual * (1 - faded)));
    }

    /// <summary>The sum after one more pass.</summary>
    /// <param name="sum">The sum so far; 0 at the start.</param>
    /// <param name="isRead">Whether the tag, certainly there, was read.</param>
    /// <returns>0 to <see cref="Limit"/>; at the limit the tag is fading.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The sum is outside 0 to <see cref="Limit"/>.</exception>
    public int Next(int sum, bool isRead)
    {
        if (sum < 0 || sum > Limit)
        {
            throw new ArgumentOutOfRangeException(nameof(sum), sum, "The sum must be 0 to the limit.");
        }

        return isRead ? Math.Max(0, sum - 1) : Math.Min(Limit, sum + Up);
    }

    /// <summary>Whether the tag is fading.</summary>
    /// <param name="sum">The sum.</param>
    /// <returns>True at the limit.</returns>
    public bool IsFading(int sum) => sum >= Limit;

    /// <summary>The exact mean number of passes until a tag is called fading, from a sum of 0.</summary>
    /// <param name="missShare">The share of passes without a read; above 0, below 1.</param>
    /// <returns>1 or more.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The share is out of its range.</exception>
    public double MeanPassesToSignal(double missShare) => missShare is > 0 and < 1
        ? RunLength.Mean(missShare, Up, Limit)
        : throw new ArgumentOutOfRangeException(nameof(missShare), missShare, "The share must be above 0 and below 1.");
}
