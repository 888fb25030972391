using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Identifiers;
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
    private readonly List<ReadSession> ofOtherKits;
    private readonly ReadSession? latest;

    public ToolReadsCollector(ReconciliationScope scope, KitId subject, IReadOnlyList<SessionSummary> sessions)
    {
        this.scope = scope;
        this.subject = subject;
        used = [.. sessions.Where(static summary => summary.IsUsed).Select(static summary => summary.Session)];
        recent = [.. sessions.Where(static summary => summary.LeftOut is null).Select(static summary => summary.Session)];
        ofOtherKits = scope.OtherSessionsOf(subject);

        // Usable or not: whoever presented the kit again may have taken something out before.
        latest = sessions.LastOrDefault(summary => summary.Session.To <= scope.AsOf)?.Session;
    }

    public bool HasUsableSession => used.Count > 0;

    public IReadOnlyList<ReadSession> UsedSessions => used;

    public IReadOnlyList<ReadSession> SessionsOfOtherKits => ofOtherKits;

    public ToolReads Collect(ToolId tool)
    {
        var reads = new ToolReads();
        foreach (IGrouping<TagId, TagBinding> tag in scope.Input.Tags.HistoryOf(tool)
            .Where(binding => binding.From <= scope.AsOf)
            .GroupBy(static binding => binding.Tag)
            .OrderBy(static group => group.Key))
        {
            CollectTag(tag.Key, tag, reads);
        }

        reads.ReadsWithheld ??= WhyLaterSilent(reads);
        CollectReencoded(tool, reads);
        DoubtOtherManifests(tool, reads);
        return reads;
    }

    /// <summary>One tool cannot satisfy two kits: read where the other kit was presented too, or only in the other kit's session, it settles nothing here.</summary>
    private void DoubtOtherManifests(ToolId tool, ToolReads reads)
    {
        foreach (KitId other in scope.Input.Kits.ManifestsWith(tool, scope.AsOf).Select(static manifest => manifest.Id))
        {
            if (other == subject)
            {
                continue;
            }

            bool readHere = reads.Best is { LookCount: > 0 };
            bool together = readHere && used.Any(session => session.Presents(other));
            bool readThere = ofOtherKits.Any(session => session.Presents(other) && session.IsUsable
                && reads.LiveTags.Any(binding => session.Find(binding.Tag) is { AcceptedCount: > 0 } found && IsFresh(found)));
            if (together || readThere)
            {
                reads.Doubts.Add(new IdentityDoubt(
                    new Reason(ReconciliationReasons.CreditedToTwoKits, ("tool", tool.Value), ("kit", other.Value)), reads.LastSeen ?? scope.AsOf));
            }
        }
    }

    private void CollectTag(TagId tag, IEnumerable<TagBinding> bindings, ToolReads reads)
    {
        var passes = new List<TimedPass>();
        var antennas = new SortedDictionary<(string Station, byte Antenna), AntennaEvidence>();
        TagEvidence? strongest = null;
        DateTimeOffset? lastSeen = null;
        var chips = new SortedSet<string>(StringComparer.Ordinal);
        bool isLive = false;
        foreach (TagBinding binding in bindings)
        {
            isLive |= used.Count == 0 && binding.IsLiveAt(scope.AsOf);
            foreach (ReadSession session in used)
            {
                bool overlaps = binding.From < session.To && (binding.Until is not { } until || until > session.From);
                TagEvidence? evidence = session.Find(tag) is { AcceptedCount: > 0 } found && IsFresh(found) ? found : null;
                if (overlaps && session.Presentation.Station.ControlTags.Any(control => control.Tag == tag))
                {
                    // A tag that is fixed at the station shows that the station works; it cannot show that a tool is back.
                    reads.Doubts.Add(new IdentityDoubt(
                        new Reason(ReconciliationReasons.BoundControlTag, ("tag", tag.ToString()), ("station", session.Presentation.Station.Id.Value)), session.To));
                }
                else if (overlaps && (evidence is null || IsLiveForAll(binding, evidence)))
                {
                    isLive = true;
                    AddPasses(session, evidence, passes, antennas);
                    if (evidence is not null)
                    {
                        strongest = Stronger(strongest, evidence);
                        lastSeen = lastSeen is null || evidence.LastSeen > lastSeen ? evidence.LastSeen : lastSeen;
                        AddChips(tag, binding, evidence, chips, reads);
                    }
                }
                else if (evidence is not null)
                {
                    DoubtBinding(tag, binding, evidence, reads);
                }
            }
        }

        if (isLive)
        {
            reads.LiveTags.Add(bindings.Last());
            var presence = new PresenceEvidence
            {
                Tag = tag,
                Passes = SeparatePasses.Of(passes, scope.Policy.Sessions.MinimumPass),
                Antennas = [.. antennas.Values],
                Strongest = strongest?.Strongest,
                HasTid = chips.Count > 0,
                History = scope.Input.History.TryGetValue(tag, out TagHistory? history) ? history : null,
            };
            Choose(presence, lastSeen, reads);
        }
    }

    private void Choose(PresenceEvidence presence, DateTimeOffset? lastSeen, ToolReads reads)
    {
        if (used.Count == 0)
        {
            return;
        }

        if (presence.LookCount == 0)
        {
            reads.SilentTagCount++;
        }

        PresenceJudgement judgement = scope.Policy.Presence.Judge(presence);
        bool better = reads.Judgement is null
            || judgement.State > reads.Judgement.State
            || (judgement.State == reads.Judgement.State && presence.LookCount > reads.Best!.LookCount);
        if (better)
        {
            reads.Best = presence;
            reads.Judgement = judgement;
            reads.LastSeen = lastSeen;
        }

        reads.ReadsWithheld ??= WhyElsewhere(presence);
    }

    private Reason? WhyLaterSilent(ToolReads reads)
        => latest is not null && reads.Best is { LookCount: > 0 }
            && !reads.LiveTags.Any(binding => latest.Find(binding.Tag) is { AcceptedCount: > 0 })
                ? new Reason(ReconciliationReasons.LaterSilent, ("session", latest.Id.Value))
                : null;

    /// <summary>Usable or not, heard there or not, whichever of its tags: where another kit's session heard the tag more often than this kit's at the same time, this kit's other reads do not outweigh it.</summary>
    private Reason? WhyElsewhere(PresenceEvidence presence)
    {
        foreach (ReadSession own in recent)
        {
            int here = own.Find(presence.Tag)?.LookCount ?? 0;
            foreach (ReadSession other in ofOtherKits)
            {
                if (other.Presentation.Station.Id == own.Presentation.Station.Id
                    && other.From < own.To && own.From < other.To
                    && other.Find(presence.Tag) is { } there && there.LookCount > here)
                {
                    return new Reason(ReconciliationReasons.BetterElsewhere, ("session", other.Id.Value));
                }
            }
        }

        return null;
    }

    /// <summary>In a long session a tag last heard long ago says nothing of now, as if the session had ended then.</summary>
    private bool IsFresh(TagEvidence evidence) => evidence.LastSeen is { } last && scope.AsOf - last <= scope.Policy.Sessions.SessionAgeMax;

    private static bool IsLiveForAll(TagBinding binding, TagEvidence evidence)
        => evidence is { FirstSeen: { } first, LastSeen: { } last } && binding.IsLiveAt(first) && binding.IsLiveAt(last);

    private static TagEvidence Stronger(TagEvidence? a, TagEvidence b)
        => a?.Strongest is null || b.Strongest?.CentiDbm > a.Strongest?.CentiDbm ? b : a;

    private static void AddPasses(
        ReadSession session,
        TagEvidence? evidence,
        List<TimedPass> passes,
        SortedDictionary<(string Station, byte Antenna), AntennaEvidence> antennas)
    {
        bool degraded = session.Health.State == SessionState.Degraded;
        foreach (ReadPass pass in session.Passes)
        {
            int looks = 0;
            foreach (LookCell cell in evidence?.Cells ?? [])
            {
                looks += cell.Pass == pass.Number ? cell.LookCount : 0;
            }

            var looked = new PassEvidence(session.Id, pass.Number, degraded, looks, pass.LookLimit);
            passes.Add(new TimedPass(session.Presentation.Station.Id, pass.From, pass.To, looked));
        }

        StationId station = session.Presentation.Station.Id;
        foreach (LookCell cell in evidence?.Cells ?? [])
        {
            (string, byte) key = (station.Value, cell.Antenna.Number);
            antennas[key] = antennas.TryGetValue(key, out AntennaEvidence so)
                ? so with { IsDegraded = so.IsDegraded && degraded, LookCount = so.LookCount + cell.LookCount }
                : new AntennaEvidence(station, cell.Antenna, degraded, cell.LookCount);
        }
    }

    private static void AddChips(TagId tag, TagBinding binding, TagEvidence evidence, SortedSet<string> chips, ToolReads reads)
    {
        DateTimeOffset at = evidence.LastSeen!.Value;
        foreach (Tid chip in evidence.Tids)
        {
            chips.Add(chip.ToString());
            if (!binding.Tid.IsEmpty && chip != binding.Tid)
            {
                reads.Doubts.Add(new IdentityDoubt(
                    new Reason(ReconciliationReasons.WrongChip, ("tag", tag.ToString()), ("read", chip.ToString()), ("bound", binding.Tid.ToString())), at));
            }
        }

        if (chips.Count > 1)
        {
            string all = string.Join(", ", chips) + (evidence.HasMoreTids ? ", ..." : "");
            reads.Doubts.Add(new IdentityDoubt(new Reason(ReconciliationReasons.TwoChips, ("tag", tag.ToString()), ("tids", all)), at));
        }
    }

    private void DoubtBinding(TagId tag, TagBinding binding, TagEvidence evidence, ToolReads reads)
    {
        if (evidence is not { FirstSeen: { } first, LastSeen: { } last } || last < binding.From)
        {
            return;
        }

        if (binding.Until is { } until && first >= until)
        {
            // A tag that was bound anew after retirement speaks for its new binding.
            if (scope.Input.Tags.FindLive(tag, last) is null)
            {
                reads.Doubts.Add(new IdentityDoubt(new Reason(ReconciliationReasons.RetiredTagRead, ("tag", tag.ToString()), ("at", scope.Time(last))), last));
            }
        }
        else
        {
            reads.Doubts.Add(new IdentityDoubt(new Reason(ReconciliationReasons.BindingChanged, ("tag", tag.ToString())), last));
        }
    }

    private void CollectReencoded(ToolId tool, ToolReads reads)
    {
        foreach (ReadSession session in used)
        {
            foreach (TagReading reading in scope.ReadingOf(session).ReencodedOf(tool))
            {
                reads.Doubts.Add(new IdentityDoubt(
                    new Reason(ReconciliationReasons.Reencoded, ("tag", reading.Evidence.Tag.ToString())), reading.Evidence.LastSeen ?? session.To));
            }
        }
    }
}
