using System.Collections.Generic;
using System.Globalization;
using ToolLedger.Records;

namespace ToolLedger.Trials;

/// <summary>What trials show of tags and kits, and what they do not.</summary>
public static class TrialReasons
{
    /// <summary>The worst setting shows the share that is needed.</summary>
    public static ReasonKind Qualified { get; } = new("trial.qualified", "{figure}");

    /// <summary>Nobody tried the tag since it was bound.</summary>
    public static ReasonKind NotTried { get; } = new("trial.not-tried", "not tried since it was bound: {presentations} presentations in the full kit, worst way round, without a miss would show {needed} %");

    /// <summary>The tag was tried outside its kit alone.</summary>
    public static ReasonKind OnlyOnBench { get; } = new("trial.only-on-bench", "tried on the bench or with one antenna alone, which shows nothing of the full kit: {presentations} presentations there without a miss would show {needed} %");

    /// <summary>Nothing was missed, in too few presentations.</summary>
    public static ReasonKind TooFew { get; } = new("trial.too-few", "{figure}; nothing was missed, but it takes {presentations} presentations without a miss to show {needed} %");

    /// <summary>The trials neither show the share nor rule it out.</summary>
    public static ReasonKind NotShown { get; } = new("trial.not-shown", "{figure}; {needed} % is neither shown nor ruled out: try it more often, or mount it otherwise");

    /// <summary>The trials show that the share is not reached.</summary>
    public static ReasonKind Weak { get; } = new("trial.weak", "{figure}; {needed} % is not reached: mount it otherwise, and try it again");

    /// <summary>Kit: what the trials say of a complete kit.</summary>
    public static ReasonKind KitComplete { get; } = new("trial.kit-complete",
        "of {tags} tagged {tags:line|lines}, a complete kit is read complete in at least {least} of 100 presentations whatever the reads have in common, in at least {product} of 100 if tags were missed independently of each other, which water, foil or a faulty antenna undo, and in at most {most} of 100");

    /// <summary>Kit: lines whose tags nobody tried in the full kit.</summary>
    public static ReasonKind KitNotTried { get; } = new("trial.kit-not-tried", "nothing can be said of a complete kit: the tags of {count:line|lines} {lines} were not tried in the full kit");

    /// <summary>Kit: no tool of it carries a tag.</summary>
    public static ReasonKind KitNoTags { get; } = new("trial.kit-no-tags", "no line of the kit carries a live tag: no reader sees any of it");

    /// <summary>A trial of a tag and a tool that are not bound to each other.</summary>
    public static ReasonKind NotBound { get; } = new("trial.not-bound", "tag {tag} is not bound to tool {tool} at {at}, so the trial of {trialAt} counts for no line: was the tag or the tool written wrongly, or was the tag changed?");

    /// <summary>A trial from before the tag was bound.</summary>
    public static ReasonKind BeforeBinding { get; } = new("trial.before-binding", "the trial of tag {tag} on tool {tool} of {trialAt} was made before they were bound at {from}: it is another mounting's");

    /// <summary>A trial later than the instant asked about.</summary>
    public static ReasonKind AfterAsOf { get; } = new("trial.after-as-of", "the trial of tag {tag} on tool {tool} of {trialAt} is later than {at}");

    /// <summary>Every kind of this room.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } = [Qualified, NotTried, OnlyOnBench, TooFew, NotShown, Weak, KitComplete, KitNotTried, KitNoTags, NotBound, BeforeBinding, AfterAsOf];

    internal static string Percent(decimal share) => (share * 100).ToString("0.##", CultureInfo.InvariantCulture);

    internal static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
