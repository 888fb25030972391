using System;
using ToolLedger.Presence;

namespace ToolLedger.Reconciliation;

/// <summary>When patterns in the reads become findings. The defaults are this library's own (P0), not a directive's.</summary>
/// <remarks>Immutable and thread-safe; change with an object initializer.</remarks>
public sealed partial class FindingPolicy
{
    /// <summary>Tags of another kit heard shortly that make "kit passing".</summary>
    /// <value>Tags; 2 to 1,000. The default is 3; at least half of that kit's live tags are needed too.</value>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public int PassingTagsNeeded { get; init => field = InRange(value, 2, 1000, nameof(PassingTagsNeeded)); } = 3;

    /// <summary>The longest time from the first to the last look of another kit's tags that is still "passing".</summary>
    /// <value>0 to 10 minutes. The default is 10 s.</value>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public TimeSpan PassingSpanMax
    {
        get;
        init => field = value >= TimeSpan.Zero && value <= TimeSpan.FromMinutes(10)
            ? value
            : throw new ArgumentOutOfRangeException(nameof(value), value, "The passing span must be 0 to 10 minutes.");
    } = TimeSpan.FromSeconds(10);

    /// <summary>Open lines that make a shared cause (attenuated, one location, one antenna).</summary>
    /// <value>Lines; 2 to 1,000. The default is 3.</value>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public int SharedCauseLinesNeeded { get; init => field = InRange(value, 2, 1000, nameof(SharedCauseLinesNeeded)); } = 3;

    /// <summary>How far below its baseline every look must be to call the bag attenuated.</summary>
    /// <value>Decibels; 1 to 60. The default is 10.</value>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public int AttenuationDecibels { get; init => field = InRange(value, 1, 60, nameof(AttenuationDecibels)); } = 10;

    /// <summary>The longest time from the first to the last look of a weak tag that is called brief; it must be silent at least as long besides.</summary>
    /// <value>0 to 10 minutes. The default is 10 s (ours).</value>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public TimeSpan BriefSpanMax
    {
        get;
        init => field = value >= TimeSpan.Zero && value <= TimeSpan.FromMinutes(10)
            ? value
            : throw new ArgumentOutOfRangeException(nameof(value), value, "The brief span must be 0 to 10 minutes.");
    } = TimeSpan.FromSeconds(10);

    /// <summary>How many unknown tags of a session, the first in order of their ids, are compared with live ones that differ in one bit. It is a note only: an
    /// identifier is never matched approximately.</summary>
    /// <value>Tags; 0 to 1,000, where 0 makes no comparison. The default is 20 (ours): each costs a look-up for each of its bits.</value>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public int NearMissTagsMax { get; init => field = InRange(value, 0, 1000, nameof(NearMissTagsMax)); } = 20;

    /// <summary>How far a session in which a tag was there and silent raises the sum that watches for fading tags; one in which it was read lowers it by 1.</summary>
    /// <value>Steps; 1 to 1,000. The default is 10 (ours): about the reference value of a Bernoulli CUSUM for a miss rate that goes from 5 to 15 in 100.</value>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public int FadingMissSteps { get; init => field = InRange(value, 1, TagFadingWatch.MaxLimit, nameof(FadingMissSteps)); } = 10;

    /// <summary>The sum at which a tag is called fading.</summary>
    /// <value>Steps; 1 to 1,000. The default is 33 (ours): a tag that misses 5 in 100 is called fading once in 955 sessions on average, one that misses 15 in 100 after 43.</value>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public int FadingLimit { get; init => field = InRange(value, 1, TagFadingWatch.MaxLimit, nameof(FadingLimit)); } = 33;

    /// <summary>The watch that those two make.</summary>
    public TagFadingWatch FadingWatch => new(FadingMissSteps, FadingLimit);

    private static int InRange(int value, int min, int max, string name)
        => value >= min && value <= max ? value : throw new ArgumentOutOfRangeException(name, value, string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{name} must be {min} to {max}."));
}
