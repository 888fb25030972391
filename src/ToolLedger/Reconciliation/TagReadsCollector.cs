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

/// <summary>Collects the looks and doubts of one tag from the sessions of a kit, and keeps the better of the tags of a tool.</summary>
internal sealed class TagReadsCollector(ReconciliationScope scope, ToolReadsCollector sessions)
{
    /// <param name="tag">The tag.</param>
    /// <param name="tool">The tool.</param>
    /// <param name="listedIn">The part of the kit whose manifest lists it.</param>
    /// <param name="bindings">The bindings of that tag to that tool.</param>
    /// <param name="gone">That the tool was somewhere else, or null: what was read before that has lost its force.</param>
    /// <param name="reads">Where it goes.</param>
    public void Collect(TagId tag, Tool tool, KitTree listedIn, ReadOnlySpan<TagBinding> bindings, ElsewhereEvidence? gone, ToolReads reads)
    {
        var looks = default(LooksByForce);
        Reason? withheld = null;
        bool isLive = false, isSuspect = false;
        foreach (TagBinding binding in bindings)
        {
            BindingTrust trust = TrustSearch.Of(scope, binding, tool, reads.Mismatches);
            bool isNow = binding.IsLiveAt(scope.AsOf);
            ReadSession? held = AddLooks(tag, binding, trust.From, gone, ref looks, reads);
            isLive |= held is not null || (sessions.UsedSessions.Count == 0 && isNow);
            if (held is not null || isNow)
            {
                foreach (IdentityDoubt doubt in trust.Doubts)
                {
                    reads.AddDoubt(isNow ? doubt : doubt.SaidBy(held!));
                }

                withheld ??= trust.Withheld;
                isSuspect |= trust.IsSuspect;
            }
        }

        if (!isLive)
        {
            return;
        }

        reads.AddLiveTag(bindings[^1], isSuspect);
        reads.Elsewhere ??= WhyElsewhere(tag, bindings);
        if (looks.Past is { } past && looks.Trusted?.LastSeen is null)
        {
            // What was read before the tool was somewhere else is told, and settles nothing.
            Choose(tag, tool, listedIn, past, bindings, isSuspect, gone!.Why, reads);
        }
        else
        {
            // A doubt that was cleared since took the force of what was heard before, not that of the silence: clearing says that the tag was on the tool all along.
            looks.Trusted?.AddSilenceOf(looks.Doubted);
            Choose(tag, tool, listedIn, looks.Trusted ?? looks.Doubted, bindings, isSuspect, looks.Trusted is null ? withheld : null, reads);
        }
    }

    /// <summary>In a long session a tag last heard long ago says nothing of now, as if the session had ended then.</summary>
    public bool IsFresh(TagEvidence evidence) => evidence.LastSeen is { } last && scope.AsOf - last <= scope.Policy.Sessions.SessionAgeMax;

    /// <summary>Looks speak for a tool only in usable sessions; what speaks against it is collected from all.</summary>
    /// <returns>A session of the kit, a usable one if there is one, through which the binding held, heard in it or not; null if there is none.</returns>
    private ReadSession? AddLooks(TagId tag, TagBinding binding, DateTimeOffset trustedFrom, ElsewhereEvidence? gone, ref LooksByForce looks, ToolReads reads)
    {
        ReadSession? held = null;
        for (int i = 0; i < sessions.RecentSessions.Count; i++)
        {
            ReadSession session = sessions.RecentSessions[i];
            bool overlaps = binding.From < session.To && (binding.Until is not { } until || until > session.From);
            TagEvidence? heard = session.Find(tag) is { IsHeard: true } found ? found : null;
            if (overlaps && session.Presentation.Station.HasControlTag(tag))
            {
                // A tag that is fixed at the station shows that the station works; it cannot show that a tool is back.
                reads.AddDoubt(new IdentityDoubt(
                    new Reason(ReconciliationReasons.BoundControlTag, ("tag", tag.ToString()), ("station", session.Presentation.Station.Id.Value)), session.To).SaidBy(session));
            }
            else if (overlaps && (heard is null || IsLiveForAll(binding, heard)))
            {
                held = held is { IsUsable: true } ? held : session;
                AddLooks(session, heard is not null && IsFresh(heard) ? heard : null, trustedFrom, gone, ref looks);
                if (heard is not null)
                {
                    reads.AddHeard(session, heard.LastSeen!.Value);
                    IdentityCheck.AddChips(binding, session, heard, ref looks.Chips, reads);
                }
            }
            else if (heard is not null)
            {
                IdentityCheck.DoubtBinding(scope, binding, session, heard, reads);
            }
        }

        return held;
    }

    private void AddLooks(ReadSession session, TagEvidence? heard, DateTimeOffset trustedFrom, ElsewhereEvidence? gone, ref LooksByForce looks)
    {
        if (session.IsUsable || sessions.IsSilenceOfUnusableWeighed)
        {
            looks.For(session.From < trustedFrom, session.IsUsable && heard is not null && gone?.IsAfter(session, heard) == true).Add(session, heard);
        }
    }

    private void Choose(TagId tag, Tool tool, KitTree listedIn, TagLooks? looks, ReadOnlySpan<TagBinding> bindings, bool isSuspect, Reason? withheld, ToolReads reads)
    {
        if (looks is null)
        {
            return;
        }

        TimeSpan shortest = scope.Policy.Sessions.MinimumPass;
        KitId? neighbour = NeighbourSearch.Find(looks.Passes, SilentBeside(tag), sessions.RecentSessions, shortest);
        TagHistory? history = !isSuspect && scope.Input.History.TryGetValue(tag, out TagHistory? known) ? known : null;
        PresenceEvidence presence = looks.ToEvidence(
            tag, shortest, history, neighbour is not null, (sessions.LineCount, reads.TagCount), scope.Policy.Presence.WeighsSilence, MountingOf(bindings, looks.Passes), scope.Priors.Of(tool, listedIn, looks.Passes));
        reads.SilentTagCount += presence.LookCount == 0 && neighbour is null ? 1 : 0;
        PresenceJudgement judgement = Judge(presence, looks, isExplained: neighbour is not null);
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
            reads.Changes = neighbour is null ? looks.Changes : [];
            NoteNeighbour(neighbour, looks, reads);
        }
    }

    private PresenceJudgement Judge(PresenceEvidence presence, TagLooks looks, bool isExplained)
    {
        PresencePolicy policy = scope.Policy.Presence;
        PresenceJudgement lowest = policy.Judge(presence);
        if (policy.WeighsSilence && !isExplained && lowest.State == PresenceState.Accounted)
        {
            foreach (PresenceEvidence other in looks.WithLaterSessionsAsGood(presence, scope.Policy.Sessions.MinimumPass))
            {
                PresenceJudgement judgement = policy.Judge(other);
                bool isLower = judgement.State < lowest.State || (judgement.State == lowest.State && judgement.Risk?.Decision.Risk > lowest.Risk?.Decision.Risk);
                lowest = isLower ? judgement : lowest;
            }
        }

        return lowest;
    }

    private IEnumerable<SessionPass> SilentBeside(TagId tag)
    {
        foreach (ReadSession session in sessions.RecentSessions)
        {
            if (!session.IsUsable)
            {
                TagEvidence? evidence = session.Find(tag);
                for (int i = 0; i < session.Passes.Count; i++)
                {
                    if (evidence is null || evidence.Cells.All(cell => cell.Pass != session.Passes[i].Number))
                    {
                        yield return new SessionPass(session, i, 0, 0);
                    }
                }
            }
        }
    }

    /// <summary>The model and mounting of the tag in those passes; null where its bindings do not state one, <see cref="PresenceEvidence.ManyMountings"/> where they do not say one and the same.</summary>
    private static string? MountingOf(ReadOnlySpan<TagBinding> bindings, IReadOnlyList<SessionPass> passes)
    {
        string? found = null;
        bool isFirst = true;
        foreach (TagBinding binding in bindings)
        {
            if (!HeldIn(binding, passes))
            {
                continue;
            }

            if (!isFirst && !string.Equals(found, binding.TagModel, StringComparison.Ordinal))
            {
                return PresenceEvidence.ManyMountings;
            }

            (found, isFirst) = (binding.TagModel, false);
        }

        return found;
    }

    private static bool HeldIn(TagBinding binding, IReadOnlyList<SessionPass> passes)
    {
        for (int i = 0; i < passes.Count; i++)
        {
            if (binding.From < passes[i].Pass.To && !(binding.Until <= passes[i].Pass.From))
            {
                return true;
            }
        }

        return false;
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

    /// <summary>Usable or not, heard there or not, whichever of its tags: where another kit's session heard the tag more often than this kit's at the same time, this kit's other reads do not outweigh it.</summary>
    private Reason? WhyElsewhere(TagId tag, ReadOnlySpan<TagBinding> bindings)
    {
        foreach (ReadSession other in sessions.OthersThatHeard(tag))
        {
            TagEvidence heard = other.Find(tag)!;
            foreach (ReadSession own in sessions.RecentSessions)
            {
                if (other.Presentation.Station.Id == own.Presentation.Station.Id
                    && IsWorn(bindings, heard.LastSeen)
                    && other.From < own.To && own.From < other.To
                    && heard.LookCount > (own.Find(tag)?.LookCount ?? 0))
                {
                    return new Reason(ReconciliationReasons.BetterElsewhere, ("session", other.Id.Value));
                }
            }
        }

        return null;
    }

    /// <summary>A tag that was no longer on the tool when it was heard says nothing of it.</summary>
    private static bool IsWorn(ReadOnlySpan<TagBinding> bindings, DateTimeOffset? at)
    {
        foreach (TagBinding binding in bindings)
        {
            if (at is { } heard && binding.IsLiveAt(heard))
            {
                return true;
            }
        }

        return false;
    }

    private static bool IsLiveForAll(TagBinding binding, TagEvidence evidence)
        => evidence is { FirstSeen: { } first, LastSeen: { } last } && binding.IsLiveAt(first) && binding.IsLiveAt(last);

    /// <summary>The looks of one tag by whether they have force, and the chip numbers seen with them.</summary>
    private struct LooksByForce
    {
        public TagLooks? Trusted;
        public TagLooks? Past;
        public TagLooks? Doubted;
        public IdentityCheck.ChipsSeen Chips;

        public TagLooks For(bool isDoubted, bool isPast) => isDoubted ? Doubted ??= new TagLooks() : isPast ? Past ??= new TagLooks() : Trusted ??= new TagLooks();
    }
}
