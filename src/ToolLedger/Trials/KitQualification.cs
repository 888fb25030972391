using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Trials;

/// <summary>What trials say of a kit before it is signed: its weakest tags, those that nobody tried, and how often a complete kit would be read complete.</summary>
/// <remarks>The lines of the list itself; what is in a sub-kit is tried as that kit. It warns and settles nothing. Immutable and thread-safe; compared by reference.</remarks>
public sealed class KitQualification
{
    private KitQualification(KitManifest manifest, IReadOnlyList<LineQualification> lines, IReadOnlyList<UnusedTrial> unused, decimal confidence)
    {
        Unused = unused;
        Manifest = manifest;
        Lines = lines;
        LineQualification[] untried = [.. lines.Where(static line => line.Qualification.Worst is null)];
        if (lines.Count == 0)
        {
            Reason = new Reason(TrialReasons.KitNoTags);
        }
        else if (untried.Length > 0)
        {
            string numbers = string.Join(", ", untried.Select(static line => line.Line.Number).Order());
            Reason = new Reason(TrialReasons.KitNotTried, ("lines", numbers), ("count", TrialReasons.Text(untried.Length)));
        }
        else
        {
            // Each limit holds with so little doubt that all of them together hold with the confidence asked for.
            double each = 1 - ((1 - (double)confidence) / lines.Count);
            decimal[] shares = [.. lines.Select(line => TrialFigure.Lower(line.Qualification.Worst!.Presented, line.Qualification.Worst.Read, each))];
            CompleteReadAtLeast = decimal.Max(0, 1 - shares.Sum(static share => 1 - share));
            CompleteReadIfIndependent = decimal.Floor(shares.Aggregate(1m, static (product, share) => product * share) * 10_000) / 10_000;
            CompleteReadAtMost = lines.Min(static line => line.Qualification.Worst!.ReadShareAtMost);
            Reason = new Reason(TrialReasons.KitComplete, ("tags", TrialReasons.Text(lines.Count)), ("least", Hundredths(CompleteReadAtLeast.Value)),
                ("product", Hundredths(CompleteReadIfIndependent.Value)), ("most", TrialReasons.Percent(decimal.Ceiling(CompleteReadAtMost.Value * 1000) / 1000)));
        }
    }

    /// <summary>The list.</summary>
    public KitManifest Manifest { get; }

    /// <summary>Every line with a live tag, the one to look after first: not tried, then by its lower limit.</summary>
    public IReadOnlyList<LineQualification> Lines { get; }

    /// <summary>The lines whose tags are not shown to be read as often as needed, in that order.</summary>
    public IEnumerable<LineQualification> Weakest => Lines.Where(static line => !line.Qualification.IsQualified);

    /// <summary>The trials that counted for nothing: of a tag and a tool that are not bound to each other at the instant, whichever kit they are of, and those of this kit's tags from before their binding or after the instant. In the order given; empty if all is well.</summary>
    public IReadOnlyList<UnusedTrial> Unused { get; }

    /// <summary>In how large a share of presentations a complete kit is read complete at least, whatever the misses of its tags have in common: one less the sum of what each may miss. Null where a tag was not tried in the full kit.</summary>
    public decimal? CompleteReadAtLeast { get; }

    /// <summary>The same if tags were missed independently of each other, which they are not in water, behind foil or with a faulty antenna. Never to be quoted without saying so.</summary>
    public decimal? CompleteReadIfIndependent { get; }

    /// <summary>In how large a share at most: no kit is read complete more often than its weakest tag is read.</summary>
    public decimal? CompleteReadAtMost { get; }

    /// <summary>All of that in a sentence, with what it assumes.</summary>
    public Reason Reason { get; }

    /// <summary>Looks at the trials of a kit's tags. Of a tool with several live tags the best counts.</summary>
    /// <param name="manifest">The list, signed or to be signed.</param>
    /// <param name="tags">Which tags sit on the tools.</param>
    /// <param name="trials">Trials of any tags.</param>
    /// <param name="asOf">The instant.</param>
    /// <param name="shareNeeded">The share of presentations in which a tag must be shown to be read; 0.5 to 0.9999.</param>
    /// <param name="confidence">The one-sided confidence; 0.5 to 0.9999.</param>
    /// <returns>The qualification.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A share is out of its range.</exception>
    public static KitQualification Of(
        KitManifest manifest, TagRegister tags, IEnumerable<TagTrial> trials, DateTimeOffset asOf, decimal shareNeeded = 0.9m, decimal confidence = 0.95m)
    {
        ArgumentNullException.ThrowIfNull(manifest);
        ArgumentNullException.ThrowIfNull(tags);
        ArgumentNullException.ThrowIfNull(trials);
        TagQualification.InRange(shareNeeded, nameof(shareNeeded));
        TagQualification.InRange(confidence, nameof(confidence));
        TagTrial[] given = [.. trials];
        ILookup<TagId, TagTrial> byTag = given.ToLookup(static trial => trial.Tag);
        var lines = new List<LineQualification>();
        foreach (ManifestLine line in manifest.Lines.Where(static line => line.Tool is not null))
        {
            TagQualification? best = tags.LiveTagsOf(line.Tool!.Id, asOf)
                .Select(binding => TagQualification.Of(binding, byTag[binding.Tag], asOf, shareNeeded, confidence))
                .MaxBy(static tag => (tag.Worst?.ReadShareAtLeast ?? -1, tag.Worst?.Presented ?? 0));
            if (best is not null)
            {
                lines.Add(new LineQualification(line, best));
            }
        }

        return new KitQualification(manifest, [.. lines.OrderBy(static line => line.Qualification.Worst?.ReadShareAtLeast ?? -1).ThenBy(static line => line.Line.Number)], UnusedOf(manifest, tags, given, asOf), confidence);
    }

    private static UnusedTrial[] UnusedOf(KitManifest manifest, TagRegister tags, TagTrial[] trials, DateTimeOffset asOf)
    {
        var unused = new List<UnusedTrial>();
        foreach (TagTrial trial in trials)
        {
            (string, string) tag = ("tag", trial.Tag.ToString()), tool = ("tool", trial.Tool.Value), made = ("trialAt", RecordTime.ToText(trial.At)), at = ("at", RecordTime.ToText(asOf));
            if (tags.LiveTagsOf(trial.Tool, asOf).FirstOrDefault(one => one.Tag == trial.Tag) is not { } binding)
            {
                unused.Add(new UnusedTrial(trial, new Reason(TrialReasons.NotBound, tag, tool, made, at)));
            }
            else if (trial.At < binding.From && manifest.FindLine(trial.Tool) is not null)
            {
                unused.Add(new UnusedTrial(trial, new Reason(TrialReasons.BeforeBinding, tag, tool, made, ("from", RecordTime.ToText(binding.From)))));
            }
            else if (trial.At > asOf && manifest.FindLine(trial.Tool) is not null)
            {
                unused.Add(new UnusedTrial(trial, new Reason(TrialReasons.AfterAsOf, tag, tool, made, at)));
            }
        }

        return [.. unused];
    }

    private static string Hundredths(decimal share) => TrialReasons.Percent(decimal.Floor(share * 1000) / 1000);

    /// <summary>The list, and what the trials say of it.</summary>
    /// <returns>One line of English text.</returns>
    public override string ToString() => $"{Manifest}: {Reason}";
}
