using System;
using System.Globalization;
using ToolLedger.Reads;
using ToolLedger.Statistics;

namespace ToolLedger.Trials;

/// <summary>All trials of one tag in one setting, with what they show: an interval, and never a bare percentage.</summary>
/// <remarks>Immutable and thread-safe; equal when all parts are.</remarks>
public sealed record TrialFigure
{
    private const decimal Steps = 10_000;

    internal TrialFigure(string? setting, bool isInFullKit, AntennaPort antenna, int presented, int read, decimal confidence)
    {
        Setting = setting;
        IsInFullKit = isInFullKit;
        Antenna = antenna;
        Presented = presented;
        Read = read;
        Confidence = confidence;
        ReadShareAtLeast = Lower(presented, read, (double)confidence);
        ReadShareAtMost = Upper(presented, read, (double)confidence);
    }

    /// <summary>The setting in the words of the site; null for the usual one.</summary>
    public string? Setting { get; }

    /// <summary>Whether the tool lay in its full kit.</summary>
    public bool IsInFullKit { get; }

    /// <summary>The antenna alone that counted, or the default for the station as a whole.</summary>
    public AntennaPort Antenna { get; }

    /// <summary>Presentations.</summary>
    public int Presented { get; }

    /// <summary>Those in which the tag was read.</summary>
    public int Read { get; }

    /// <summary>The one-sided confidence of each of the two limits.</summary>
    public decimal Confidence { get; }

    /// <summary>The exact one-sided lower limit of the share of presentations in which the tag is read (Clopper and Pearson, 1934), rounded down to four decimals. It is never 1: that nothing was missed in so many
    /// presentations allows a share that is.</summary>
    public decimal ReadShareAtLeast { get; }

    /// <summary>The upper limit likewise, rounded up.</summary>
    public decimal ReadShareAtMost { get; }

    /// <summary>What the trials show, with both numbers.</summary>
    /// <returns>Text for people.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"read in {Read} of {Presented} presentations{(Setting is null ? "" : ", " + Setting)}{(IsInFullKit ? "" : ", on the bench")}{(Antenna.IsKnown ? $", antenna {Antenna.Number} alone" : "")}: at a confidence of {Confidence * 100:0.##} % it may be missed in up to {Math.Ceiling((1 - ReadShareAtLeast) * 1000) / 10:0.#} of 100");

    internal static decimal Lower(int presented, int read, double confidence) => decimal.Floor((decimal)BinomialDistribution.LowerLimit(read, presented, confidence) * Steps) / Steps;

    private static decimal Upper(int presented, int read, double confidence) => decimal.Min(1, decimal.Ceiling((decimal)BinomialDistribution.UpperLimit(read, presented, confidence) * Steps) / Steps);
}
