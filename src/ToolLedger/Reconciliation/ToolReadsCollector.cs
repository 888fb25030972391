using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>Collects looks and doubts of a kit's tools from its sessions, bindings looked up as of the read time.</summary>
internal sealed class ToolReadsCollector
{
    private readonly ReconciliationScope scope;
    private readonly KitId subject;
    private readonly List<ReadSession> used;
    private readonly List<ReadSession> recent;
    private readonly MismatchSearch mismatches;
    private readonly TagReadsCollector tags;
    private readonly ReadSession? latest;
    private readonly DateTimeOffset weighedFrom;
    private readonly Dictionary<KitTree, ReadSession?> latestOf = new(ReferenceEqualityComparer.Instance);
    private readonly Dictionary<KitTree, HashSet<KitId>> around = new(ReferenceEqualityComparer.Instance);

    public ToolReadsCollector(ReconciliationScope scope, KitTree tree, IReadOnlyList<SessionSummary> sessions)
    {
        this.scope = scope;
        subject = tree.Manifest.Id;
        LineCount = tree.All.Sum(static part => part.Manifest.Lines.Count);
        recent = [.. sessions.Where(static summary => summary.LeftOut is null).Select(static summary => summary.Session)];
        mismatches = new MismatchSearch(scope, tree);
        used = [.. sessions.Where(static summary => summary.IsUsed).Select(static summary => summary.Session)];

        // A tag that was retired before adds no look that could speak for its tool. That no session weighed begins earlier is not enough: leaving a session out must not make anything easier.
        weighedFrom = scope.AsOf - LongestAgo(scope.Policy.Sessions);
        foreach (ReadSession session in recent)
        {
            weighedFrom = session.From < weighedFrom ? session.From : weighedFrom;
        }

        tags = new TagReadsCollector(scope, this);
        IsSilenceOfUnusableWeighed = scope.Policy.Presence.WeighsSilence && used.Count > 0;

        // Usable or not: whoever presented the kit again may have taken something out before.
        latest = sessions.LastOrDefault(summary => summary.Session.To <= scope.AsOf)?.Session;
    }

    public bool HasUsableSession => used.Count > 0;

    /// <summary>Where silence counts, a session that became unusable must not take its silence with it: it counts as silent throughout.</summary>
    public bool IsSilenceOfUnusableWeighed { get; }

    /// <summary>The lines of the kit and of the sub-kits in it.</summary>
    public int LineCount { get; }

    public IReadOnlyList<ReadSession> UsedSessions => used;

    /// <summary>The sessions of the kit that are not left out, usable or not.</summary>
    public IReadOnlyList<ReadSession> RecentSessions => recent;

    /// <summary>The sessions of other kits that heard a tag, in time order.</summary>
    public IReadOnlyList<ReadSession> OthersThatHeard(TagId tag) => scope.Sessions.OthersThatHeard(subject, tag, scope.AsOf);

    /// <summary>The longest time before or after so many looks in which a usable session of the kit went on without them; zero if none held them.</summary>
    public TimeSpan LongestSilence(DateTimeOffset first, DateTimeOffset last)
    {
        TimeSpan longest = TimeSpan.Zero;
        foreach (ReadSession session in used.Where(session => session.From <= last && first < session.To))
        {
            TimeSpan before = first - session.From, after = session.To - last;
            longest = before > longest ? before : longest;
            longest = after > longest ? after : longest;
        }

        return longest;
    }

    /// <param name="tool">The tool.</param>
    /// <param name="listedIn">The part of the kit whose manifest lists it.</param>
    public ToolReads Collect(Tool tool, KitTree listedIn)
    {
        var reads = new ToolReads();
        reads.Mismatches = mismatches.Of(tool);
        CollectTags(tool, listedIn, reads);
        if (listedIn.SwapDoubtOf(listedIn.Manifest.FindLine(tool.Id)) is { } doubt)
        {
            reads.AddDoubt(doubt);
        }

        reads.ReadsWithheld ??= reads.Elsewhere ?? WhyLaterSilent(reads, listedIn);
        CollectReencoded(tool.Id, reads);
        DoubtOtherManifests(tool.Id, listedIn, reads);
        return reads;
    }

    private void CollectTags(Tool tool, KitTree listedIn, ToolReads reads)
    {
        ElsewhereEvidence? gone = ElsewhereSearch.LastSighting(scope, tool, listedIn);

        // Most tools never had more than one tag.
        if (scope.Input.Tags.OnlyBindingOf(tool.Id) is { } only)
        {
            if (only.From <= scope.AsOf)
            {
                reads.HeardLater = HeardLater(only.Tag, [only.Tag], [only], listedIn);
                tags.Collect(only.Tag, tool, listedIn, [only], Later(gone, reads.HeardLater), reads);
            }

            return;
        }

        IGrouping<TagId, TagBinding>[] worn = [.. scope.Input.Tags.HistoryOf(tool.Id)
            .Where(binding => binding.From <= scope.AsOf)
            .GroupBy(static binding => binding.Tag)
            .OrderBy(static group => group.Key)];
        reads.TagCount = int.Max(1, worn.Count(tag => tag.Any(binding => binding.Until is not { } until || until > weighedFrom)));
        TagId[] all = Array.ConvertAll(worn, static tag => tag.Key);
        foreach (IGrouping<TagId, TagBinding> tag in worn)
        {
            // Where one of its tags was, the tool was, whatever another of them says.
            reads.HeardLater = Later(reads.HeardLater, HeardLater(tag.Key, all, tag, listedIn));
        }

        foreach (IGrouping<TagId, TagBinding> tag in worn)
        {
            tags.Collect(tag.Key, tool, listedIn, [.. tag], Later(gone, reads.HeardLater), reads);
        }
    }

    private static ElsewhereEvidence? Later(ElsewhereEvidence? one, ElsewhereEvidence? other) => one is null || other?.At > one.At ? other : one;

    /// <summary>One tool cannot satisfy two kits: read where the other kit was presented too, or only in the other kit's session, it settles nothing here.</summary>
    private void DoubtOtherManifests(ToolId tool, KitTree listedIn, ToolReads reads)
    {
        IReadOnlyList<string> labels = listedIn.LabelsOf(tool);
        bool isShown = reads.Best is { LookCount: > 0 } || (labels.Count > 1 && scope.People.SightingsOf(tool).Count > 0);
        if (labels.Count > 1 && (isShown || reads.HeardUnusable is not null))
        {
            reads.AddDoubt(new IdentityDoubt(
                new Reason(ReconciliationReasons.CreditedToTwoLines, ("tool", tool.Value), ("lines", string.Join(", ", labels))), scope.AsOf)
            {
                StandsWithoutKit = true,
                Unusable = isShown ? null : reads.HeardUnusable,
            });
        }

        IReadOnlyList<KitId> others = OtherKits.With(tool, listedIn, scope);
        for (int i = 0; i < others.Count; i++)
        {
            DoubtOtherManifest(tool, listedIn, others[i], reads);
        }
    }

    private void DoubtOtherManifest(ToolId tool, KitTree listedIn, KitId other, ToolReads reads)
    {
        bool isRead = reads.Best is { LookCount: > 0 };
        bool isInside = listedIn.Find(other) is not null;
        ReadSession? unusable = null;
        bool isSaid = isRead && isInside;
        if (!isSaid && (isRead || reads.HeardUnusable is not null))
        {
            isSaid = isRead && used.Exists(session => session.Presents(other));
            unusable = isInside ? reads.HeardUnusable
                : recent.Find(session => session.Presents(other) && !session.IsUsable) ?? (used.Exists(session => session.Presents(other)) ? reads.HeardUnusable : null);
        }

        foreach (ReadSession session in isSaid ? [] : scope.Sessions.Presenting(other))
        {
            if (!session.Presents(subject) && session.To <= scope.AsOf && scope.AsOf - session.To <= scope.Policy.Sessions.SessionAgeMax
                && reads.LiveTags.Any(binding => session.Find(binding.Tag) is { IsHeard: true }))
            {
                isSaid |= session.IsUsable;
                unusable = session.IsUsable ? unusable : session;
            }
        }

        if (isSaid || unusable is not null)
        {
            DateTimeOffset seen = reads.LastSeen ?? scope.AsOf;
            reads.AddDoubt(new IdentityDoubt(
                new Reason(ReconciliationReasons.CreditedToTwoKits, ("tool", tool.Value), ("kit", other.Value)), reads.LastHeard > seen ? reads.LastHeard.Value : seen)
            {
                StandsWithoutKit = true,
                Unusable = isSaid ? null : unusable,
            });
        }
    }

    private Reason? WhyLaterSilent(ToolReads reads, KitTree listedIn)
    {
        if (reads.Best is not { LookCount: > 0 } best || LatestOf(listedIn) is not { } last)
        {
            return null;
        }

        int looks = LooksIn(last, reads.LiveTags);
        return looks == 0 ? new Reason(ReconciliationReasons.LaterSilent, ("session", last.Id.Value))
            : looks < best.LookCount && scope.Policy.Presence is CountingPolicy counting && looks < counting.LooksNeeded
                ? new Reason(ReconciliationReasons.LaterFew, ("session", last.Id.Value), ("looks", LineConclusion.Text(looks)), ("needed", LineConclusion.Text(counting.LooksNeeded)))
            : null;
    }

    /// <summary>The last session of the part that lists a line, of whatever that part is inside of here, or of a kit that holds it all: each had the tool before it.</summary>
    private ReadSession? LatestOf(KitTree listedIn)
    {
        if (!scope.Input.Kits.HasSubKits)
        {
            return latest;
        }

        if (!latestOf.TryGetValue(listedIn, out ReadSession? last))
        {
            last = KitsAround(listedIn)
                .SelectMany(scope.Sessions.Presenting)
                .Where(session => session.To <= scope.AsOf)
                .OrderBy(static session => session.From)
                .ThenBy(static session => session.Id.Value, StringComparer.Ordinal)
                .LastOrDefault();
            latestOf.Add(listedIn, last);
        }

        return last;
    }

    private HashSet<KitId> KitsAround(KitTree listedIn)
    {
        if (!around.TryGetValue(listedIn, out HashSet<KitId>? kits))
        {
            kits = [.. scope.HoldersOf(subject), subject];
            for (KitTree? part = listedIn; part is not null; part = part.Outer)
            {
                kits.Add(part.Manifest.Id);
            }

            around.Add(listedIn, kits);
        }

        return kits;
    }

    /// <summary>A tag that was no longer on the tool when it was heard says nothing of it.</summary>
    private ElsewhereEvidence? HeardLater(TagId tag, IReadOnlyList<TagId> worn, IEnumerable<TagBinding> bindings, KitTree listedIn)
        => used.Count > 0 && scope.Sessions.All.Count > 1 && OthersThatHeard(tag) is { Count: > 0 } others
            && ElsewhereSearch.LastHearing(scope, tag, worn, KitsAround(listedIn), used, others) is { } heard && bindings.Any(binding => binding.IsLiveAt(heard.At))
                ? heard
                : null;

    private static int LooksIn(ReadSession session, IReadOnlyList<TagBinding> tags)
    {
        int looks = 0;
        for (int i = 0; i < tags.Count; i++)
        {
            looks += session.TryGetPlain(tags[i].Tag, out PlainLooks plain) ? plain.LookCount : 0;
        }

        return looks;
    }

    /// <summary>Whether the tool wore a tag at any time that evidence which still counts may be of. No session makes a difference, so that a poor one settles nothing.</summary>
    public bool HadTag(ToolId tool)
    {
        TimeSpan longest = LongestAgo(scope.Policy.Sessions);
        DateTimeOffset since = scope.AsOf - (longest > scope.Policy.Inventory.EvidenceAgeMax ? longest : scope.Policy.Inventory.EvidenceAgeMax);
        foreach (TagBinding binding in scope.Input.Tags.HistoryOf(tool))
        {
            if (binding.From <= scope.AsOf && (binding.Until is not { } until || until > since))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>How long ago the earliest session that still counts may have begun.</summary>
    private static TimeSpan LongestAgo(SessionPolicy sessions) => sessions.SessionAgeMax + sessions.MaximumWindow;

    private void CollectReencoded(ToolId tool, ToolReads reads)
    {
        foreach (ReadSession session in recent)
        {
            foreach (TagReading reading in scope.ReadingOf(session).ReencodedOf(tool))
            {
                reads.AddDoubt(new IdentityDoubt(
                    new Reason(ReconciliationReasons.Reencoded, ("tag", reading.Evidence.Tag.ToString())), reading.Evidence.LastSeen ?? session.To).SaidBy(session));
            }
        }
    }
}
