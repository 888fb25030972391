using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Trials;

/// <summary>What the trials of a tag on a tool show, and whether that qualifies it: its worst setting in the full kit counts, and good settings never make up for it.</summary>
/// <remarks>Immutable and thread-safe; compared by reference.</remarks>
public sealed class TagQualification
{
    private const int MostNeeded = TagTrial.MaxPresented;

    private TagQualification(TagBinding binding, IReadOnlyList<TrialFigure> figures, decimal shareNeeded, decimal confidence)
    {
        Binding = binding;
        Figures = figures;
        ShareNeeded = shareNeeded;
        Worst = figures.Where(static figure => figure.IsInFullKit && !figure.Antenna.IsKnown).MinBy(static figure => (figure.ReadShareAtLeast, -figure.Presented));
        Reason = Why(confidence);
    }

    /// <summary>The tag, the tool and since when they belong together.</summary>
    public TagBinding Binding { get; }

    /// <summary>One figure for each setting and antenna, those in the full kit first, then by setting (ordinal) and antenna.</summary>
    public IReadOnlyList<TrialFigure> Figures { get; }

    /// <summary>The setting in the full kit with the lowest limit; null where there was no trial in the full kit.</summary>
    public TrialFigure? Worst { get; }

    /// <summary>The share of presentations in which the tag must be shown to be read.</summary>
    public decimal ShareNeeded { get; }

    /// <summary>Whether even the worst setting shows that share.</summary>
    public bool IsQualified => Worst?.ReadShareAtLeast >= ShareNeeded;

    /// <summary>Why it is qualified or not, and what would show it.</summary>
    public Reason Reason { get; }

    /// <summary>Looks at the trials of a tag on its tool. Those made before the tag was bound, or after the instant, are another mounting's or not known yet, and do not count.</summary>
    /// <param name="binding">The binding.</param>
    /// <param name="trials">Trials of any tags.</param>
    /// <param name="asOf">The instant.</param>
    /// <param name="shareNeeded">The share of presentations in which the tag must be shown to be read; 0.5 to 0.9999.</param>
    /// <param name="confidence">The one-sided confidence; 0.5 to 0.9999.</param>
    /// <returns>The qualification.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A share is out of its range.</exception>
    public static TagQualification Of(TagBinding binding, IEnumerable<TagTrial> trials, DateTimeOffset asOf, decimal shareNeeded = 0.9m, decimal confidence = 0.95m)
    {
        ArgumentNullException.ThrowIfNull(binding);
        ArgumentNullException.ThrowIfNull(trials);
        InRange(shareNeeded, nameof(shareNeeded));
        InRange(confidence, nameof(confidence));
        TrialFigure[] figures =
        [
            .. trials
                .Where(trial => trial.Tag == binding.Tag && trial.Tool == binding.Tool && trial.At >= binding.From && trial.At <= asOf)
                .GroupBy(static trial => (trial.IsInFullKit, trial.Setting, Antenna: trial.Antenna.Number))
                .OrderByDescending(static group => group.Key.IsInFullKit)
                .ThenBy(static group => group.Key.Setting, StringComparer.Ordinal)
                .ThenBy(static group => group.Key.Antenna)
                .Select(group => FigureOf(group.ToArray(), confidence)),
        ];
        return new TagQualification(binding, figures, shareNeeded, confidence);
    }

    /// <summary>How many presentations without a miss would show a share.</summary>
    /// <param name="share">The share; 0.5 to 0.9999.</param>
    /// <param name="confidence">The one-sided confidence; 0.5 to 0.9999.</param>
    /// <returns>Presentations.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A share is out of its range.</exception>
    public static int PresentationsNeeded(decimal share, decimal confidence = 0.95m)
    {
        InRange(share, nameof(share));
        InRange(confidence, nameof(confidence));
        int low = 1, high = MostNeeded;
        while (low < high)
        {
            int middle = low + ((high - low) / 2);
            (low, high) = TrialFigure.Lower(middle, middle, (double)confidence) >= share ? (low, middle) : (middle + 1, high);
        }

        return low;
    }

    /// <summary>The tag, and what was shown.</summary>
    /// <returns>Text for people.</returns>
    public override string ToString() => $"{Binding.Tool.Value}, {Binding.Tag}: {Reason}";

    internal static void InRange(decimal share, string name)
    {
        if (share is < 0.5m or > 0.9999m)
        {
            throw new ArgumentOutOfRangeException(name, share, "A share must be 0.5 to 0.9999.");
        }
    }

    private static TrialFigure FigureOf(TagTrial[] trials, decimal confidence)
    {
        // Sums beyond what one trial may hold say no more than that.
        long presented = trials.Sum(static trial => (long)trial.Presented), read = trials.Sum(static trial => (long)trial.Read);
        const int Most = 1_000_000_000;
        (int allPresented, int allRead) = presented <= Most ? ((int)presented, (int)read) : (Most, (int)Math.Max(0, read - (presented - Most)));
        return new TrialFigure(trials[0].Setting, trials[0].IsInFullKit, trials[0].Antenna, allPresented, allRead, confidence);
    }

    private Reason Why(decimal confidence)
    {
        (string, string) needed = ("needed", TrialReasons.Percent(ShareNeeded)), presentations = ("presentations", TrialReasons.Text(PresentationsNeeded(ShareNeeded, confidence)));
        if (Worst is not { } worst)
        {
            return new Reason(Figures.Any(static figure => !figure.IsInFullKit) ? TrialReasons.OnlyOnBench : TrialReasons.NotTried, needed, presentations);
        }

        (string, string) figure = ("figure", worst.ToString());
        return IsQualified ? new Reason(TrialReasons.Qualified, figure)
            : worst.Read == worst.Presented ? new Reason(TrialReasons.TooFew, figure, needed, presentations)
            : worst.ReadShareAtMost < ShareNeeded ? new Reason(TrialReasons.Weak, figure, needed)
            : new Reason(TrialReasons.NotShown, figure, needed);
    }
}
