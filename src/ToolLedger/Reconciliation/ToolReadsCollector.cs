using System;
using System.Collections.Generic;
using System.Globalization;
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
    private readonly int lineCount;
    private readonly List<ReadSession> used;
    private readonly List<ReadSession> recent;
    private readonly List<ReadSession> weighed;
    private readonly MismatchSearch mismatches;
    private readonly ReadSession? latest;
    private readonly Dictionary<KitTree, ReadSession?> latestOf = new(ReferenceEqualityComparer.Instance);
    private readonly Dictionary<KitTree, HashSet<KitId>> around = new(ReferenceEqualityComparer.Instance);

    public ToolReadsCollector(ReconciliationScope scope, KitTree tree, IReadOnlyList<SessionSummary> sessions)
    {
        this.scope = scope;
        subject = tree.Manifest.Id;
        lineCount = tree.All.Sum(static part => part.Manifest.Lines.Count);
        recent = [.. sessions.Where(static summary => summary.LeftOut is null).Select(static summary => summary.Session)];
        mismatches = new MismatchSearch(scope, tree);
        used = [.. sessions.Where(static summary => summary.IsUsed).Select(static summary => summary.Session)];

        // Where silence counts, a session that became unusable must not take its silence with it: it counts as silent throughout.
        weighed = scope.Policy.Presence.WeighsSilence && used.Count > 0 ? recent : used;

        // Usable or not: whoever presented the kit again may have taken something out before.
        latest = sessions.LastOrDefault(summary => summary.Session.To <= scope.AsOf)?.Session;
    }

    public bool HasUsableSession => used.Count > 0;

    public IReadOnlyList<ReadSession> UsedSessions => used;

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
        ElsewhereEvidence? sighted = ElsewhereSearch.LastSighting(scope, tool, listedIn);

        // Most tools never had more than one tag.
        if (scope.Input.Tags.OnlyBindingOf(tool.Id) is { } only)
        {
            if (only.From <= scope.AsOf)
            {
                CollectTag(only.Tag, tool, listedIn, [only], sighted, reads);
            }

            return;
        }

        IGrouping<TagId, TagBinding>[] tags = [.. scope.Input.Tags.HistoryOf(tool.Id)
            .Where(binding => binding.From <= scope.AsOf)
            .GroupBy(static binding => binding.Tag)
            .OrderBy(static group => group.Key)];
        reads.TagCount = int.Max(1, tags.Length);
        foreach (IGrouping<TagId, TagBinding> tag in tags)
        {
            CollectTag(tag.Key, tool, listedIn, [.. tag], sighted, reads);
        }
    }

    /// <summary>One tool cannot satisfy two kits: read where the other kit was presented too, or only in the other kit's session, it settles nothing here.</summary>
    private void DoubtOtherManifests(ToolId tool, KitTree listedIn, ToolReads reads)
    {
        IReadOnlyList<string> labels = listedIn.LabelsOf(tool);
        if (labels.Count > 1 && (reads.Best is { LookCount: > 0 } || scope.People.SightingsOf(tool).Count > 0))
        {
            reads.AddDoubt(new IdentityDoubt(
                new Reason(ReconciliationReasons.CreditedToTwoLines, ("tool", tool.Value), ("lines", string.Join(", ", labels))), scope.AsOf)
            {
                StandsWithoutKit = true,
            });
        }

        IReadOnlyList<KitId> others = listedIn.OthersWith(tool, scope);
        for (int i = 0; i < others.Count; i++)
        {
            DoubtOtherManifest(tool, listedIn, others[i], reads);
        }
    }

    private void DoubtOtherManifest(ToolId tool, KitTree listedIn, KitId other, ToolReads reads)
    {
        bool readHere = reads.Best is { LookCount: > 0 };
        bool together = readHere && (listedIn.Find(other) is not null || used.Any(session => session.Presents(other)));
        bool readThere = scope.Sessions.Presenting(other).Any(session => !session.Presents(subject) && session.To <= scope.AsOf && session.IsUsable
            && reads.LiveTags.Any(binding => session.Find(binding.Tag) is { AcceptedCount: > 0 } found && IsFresh(found)));
        if (together || readThere)
        {
            reads.AddDoubt(new IdentityDoubt(
                new Reason(ReconciliationReasons.CreditedToTwoKits, ("tool", tool.Value), ("kit", other.Value)), reads.LastSeen ?? scope.AsOf)
            {
                StandsWithoutKit = true,
            });
        }
    }

    private void CollectTag(TagId tag, Tool tool, KitTree listedIn, ReadOnlySpan<TagBinding> bindings, ElsewhereEvidence? sighted, ToolReads reads)
    {
        ElsewhereEvidence? heard = HeardLater(tag, listedIn);
        reads.HeardLater ??= heard;
        TagLooks? trusted = null, past = null, doubted = null;
        SortedSet<string>? chips = null;
        Reason? withheld = null;
        bool isLive = false, isSuspect = false;
        foreach (TagBinding binding in bindings)
        {
            BindingTrust trust = TrustSearch.Of(scope, binding, tool, reads.Mismatches);
            bool concerns = binding.IsLiveAt(scope.AsOf);
            isLive |= used.Count == 0 && concerns;
            foreach (ReadSession session in weighed)
            {
                bool overlaps = binding.From < session.To && (binding.Until is not { } until || until > session.From);
                TagEvidence? evidence = session.IsUsable && session.Find(tag) is { AcceptedCount: > 0 } found && IsFresh(found) ? found : null;
                if (overlaps && session.IsUsable && session.Presentation.Station.HasControlTag(tag))
                {
                    // A tag that is fixed at the station shows that the station works; it cannot show that a tool is back.
                    reads.AddDoubt(new IdentityDoubt(
                        new Reason(ReconciliationReasons.BoundControlTag, ("tag", tag.ToString()), ("station", session.Presentation.Station.Id.Value)), session.To));
                }
                else if (overlaps && (evidence is null || IsLiveForAll(binding, evidence)))
                {
                    isLive = concerns = true;
                    bool isPast = evidence is not null && (session.From < sighted?.At || evidence.LastSeen < heard?.At);
                    TagLooks looks = session.From < trust.From ? doubted ??= new TagLooks() : isPast ? past ??= new TagLooks() : trusted ??= new TagLooks();
                    looks.Add(session, evidence);
                    if (evidence is not null)
                    {
                        IdentityCheck.AddChips(binding, evidence, ref chips, reads);
                    }
                }
                else if (evidence is not null)
                {
                    IdentityCheck.DoubtBinding(scope, binding, evidence, reads);
                }
            }

            if (concerns)
            {
                foreach (IdentityDoubt doubt in trust.Doubts)
                {
                    reads.AddDoubt(doubt);
                }

                withheld ??= trust.Withheld;
                isSuspect |= trust.IsSuspect;
            }
        }

        if (isLive)
        {
            reads.AddLiveTag(bindings[^1], isSuspect);
            if (past is not null && trusted?.LastSeen is null)
            {
                // What was read before the tool was somewhere else is told, and settles nothing.
                ElsewhereEvidence why = heard is null || sighted?.At > heard.At ? sighted! : heard;
                Choose(tag, past, isSuspect, why.Why, reads);
            }
            else
            {
                Choose(tag, trusted ?? doubted, isSuspect, trusted is null ? withheld : null, reads);
            }
        }
    }

    private void Choose(TagId tag, TagLooks? looks, bool isSuspect, Reason? withheld, ToolReads reads)
    {
        if (looks is null)
        {
            return;
        }

        TimeSpan shortest = scope.Policy.Sessions.MinimumPass;
        KitId? neighbour = NeighbourSearch.Find(looks.Passes, shortest);
        TagHistory? history = !isSuspect && scope.Input.History.TryGetValue(tag, out TagHistory? known) ? known : null;
        PresenceEvidence presence = looks.ToEvidence(tag, shortest, history, neighbour is not null, lineCount * reads.TagCount, scope.Policy.Presence.WeighsSilence);
        reads.SilentTagCount += presence.LookCount == 0 && neighbour is null ? 1 : 0;
        PresenceJudgement judgement = scope.Policy.Presence.Judge(presence);
        bool isBestDoubted = reads.IsBestDoubted;
        bool better = reads.Judgement is null
            || (isBestDoubted && withheld is null)
            || (isBestDoubted == withheld is not null && (judgement.State > reads.Judgement.State
                || (judgement.State == reads.Judgement.State && presence.LookCount > reads.Best!.LookCount)));
        if (better)
        {
            reads.Best = presence;
            reads.Judgement = judgement;
            reads.IsBestDoubted = withheld is not null;
            reads.FirstSeen = neighbour is null ? looks.FirstSeen : null;
            reads.LastSeen = neighbour is null ? looks.LastSeen : null;
            reads.ReadsWithheld = withheld;
            NoteNeighbour(neighbour, looks, reads);
        }

        reads.Elsewhere ??= WhyElsewhere(presence);
    }

    private static void NoteNeighbour(KitId? neighbour, TagLooks looks, ToolReads reads)
    {
        (reads.Neighbour, reads.LooksNotCounted, reads.LastHeardNearby) = (null, 0, null);
        if (neighbour is { } kit)
        {
            reads.LooksNotCounted = looks.Passes.Sum(static pass => pass.Looks);
            reads.LastHeardNearby = looks.LastSeen;
            reads.Neighbour = new Reason(
                ReconciliationReasons.OnlyWhileNearby, ("kit", kit.Value), ("looks", reads.LooksNotCounted.ToString(CultureInfo.InvariantCulture)));
        }
    }

    private Reason? WhyLaterSilent(ToolReads reads, KitTree listedIn)
        => reads.Best is { LookCount: > 0 } && LatestOf(listedIn) is { } last && !HeardAny(last, reads.LiveTags)
                ? new Reason(ReconciliationReasons.LaterSilent, ("session", last.Id.Value))
                : null;

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

    private ElsewhereEvidence? HeardLater(TagId tag, KitTree listedIn)
        => used.Count > 0 && scope.Sessions.All.Count > 1 && OthersThatHeard(tag) is { Count: > 0 } others
            ? ElsewhereSearch.LastHearing(scope, tag, KitsAround(listedIn), used, others)
            : null;

    private static bool HeardAny(ReadSession session, IReadOnlyList<TagBinding> tags)
    {
        for (int i = 0; i < tags.Count; i++)
        {
            if (session.Heard(tags[i].Tag))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Usable or not, heard there or not, whichever of its tags: where another kit's session heard the tag more often than this kit's at the same time, this kit's other reads do not outweigh it.</summary>
    private Reason? WhyElsewhere(PresenceEvidence presence)
    {
        foreach (ReadSession other in OthersThatHeard(presence.Tag))
        {
            foreach (ReadSession own in recent)
            {
                if (other.Presentation.Station.Id == own.Presentation.Station.Id
                    && other.From < own.To && own.From < other.To
                    && other.Find(presence.Tag)!.LookCount > (own.Find(presence.Tag)?.LookCount ?? 0))
                {
                    return new Reason(ReconciliationReasons.BetterElsewhere, ("session", other.Id.Value));
                }
            }
        }

        return null;
    }

    /// <summary>Whether the tool wore a tag at any time that evidence which still counts may be of. No session makes a difference, so that a poor one settles nothing.</summary>
    public bool HadTag(ToolId tool)
    {
        SessionPolicy sessions = scope.Policy.Sessions;
        TimeSpan longest = sessions.SessionAgeMax + sessions.MaximumWindow;
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

    /// <summary>In a long session a tag last heard long ago says nothing of now, as if the session had ended then.</summary>
    private bool IsFresh(TagEvidence evidence) => evidence.LastSeen is { } last && scope.AsOf - last <= scope.Policy.Sessions.SessionAgeMax;

    private static bool IsLiveForAll(TagBinding binding, TagEvidence evidence)
        => evidence is { FirstSeen: { } first, LastSeen: { } last } && binding.IsLiveAt(first) && binding.IsLiveAt(last);

    private void CollectReencoded(ToolId tool, ToolReads reads)
    {
        foreach (ReadSession session in used)
        {
            foreach (TagReading reading in scope.ReadingOf(session).ReencodedOf(tool))
            {
                reads.AddDoubt(new IdentityDoubt(
                    new Reason(ReconciliationReasons.Reencoded, ("tag", reading.Evidence.Tag.ToString())), reading.Evidence.LastSeen ?? session.To));
            }
        }
    }
}
