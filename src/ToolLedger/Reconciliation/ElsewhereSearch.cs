using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>Finds what shows that a tool was somewhere else after this kit's sessions: what was read of it before has lost its force.</summary>
internal static class ElsewhereSearch
{
    /// <summary>Why a sighting does not place a tool in the kit, or null.</summary>
    /// <param name="scope">The policy, which may take a sighting that names no kit for one in the kit.</param>
    /// <param name="listedIn">The part of the kit whose manifest lists the tool.</param>
    /// <param name="sighting">The sighting.</param>
    public static Reason? WhyElsewhere(ReconciliationScope scope, KitTree listedIn, Sighting sighting)
    {
        if (!sighting.InKit.IsEmpty)
        {
            return listedIn.IsInside(sighting.InKit) ? null : new Reason(
                ReconciliationReasons.SightedInOtherKit, ("by", sighting.By.Value), ("kit", sighting.InKit.Value), ("at", scope.Time(sighting.At)));
        }

        return scope.Policy.Inventory.SightingsWithoutKitAccepted ? null : new Reason(
            ReconciliationReasons.SightedOutside, ("by", sighting.By.Value), ("where", sighting.Where.Value), ("at", scope.Time(sighting.At)));
    }

    /// <summary>The latest sighting that does not place a tool in the kit, whatever was said later: only what was read after it may show that the tool came back.</summary>
    public static ElsewhereEvidence? LastSighting(ReconciliationScope scope, Tool tool, KitTree listedIn)
    {
        if (!scope.People.HasSightings)
        {
            return null;
        }

        foreach (Sighting sighting in scope.People.SightingsOf(tool.Id))
        {
            if (WhyElsewhere(scope, listedIn, sighting) is { } why)
            {
                return new ElsewhereEvidence(why, sighting.At);
            }
        }

        return null;
    }

    /// <summary>
    /// The last session of other kits that heard a tag later than looks of this kit's sessions, and at least as well: well enough for the presence policy by itself, or with as many looks.
    /// A session in whose notes the kit stood nearby is explained by that; one at the same station and time is compared look by look elsewhere.
    /// </summary>
    /// <param name="scope">All sessions.</param>
    /// <param name="tag">The tag.</param>
    /// <param name="worn">All tags of the tool: what it was heard with is compared as a whole, so that a look of one tag never weighs against those of another.</param>
    /// <param name="own">The kits whose sessions are this kit's own.</param>
    /// <param name="used">The usable sessions of the kit.</param>
    /// <param name="others">The sessions of other kits that heard the tag.</param>
    public static ElsewhereEvidence? LastHearing(
        ReconciliationScope scope, TagId tag, IReadOnlyList<TagId> worn, HashSet<KitId> own, List<ReadSession> used, IReadOnlyList<ReadSession> others)
    {
        ElsewhereEvidence? last = null;
        foreach (ReadSession other in others)
        {
            if (other.Find(tag) is not { FirstSeen: { } first, LastSeen: { } at } heard || at <= last?.At
                || other.Presentation.Kits.Any(own.Contains) || IsExplained(other, own, first, at) || used.Exists(session => IsBeside(session, other)))
            {
                continue;
            }

            int looks = used.Where(session => session.From < at).Sum(session => worn.Sum(one => session.Find(one)?.LookCount ?? 0));
            if (looks > 0 && (heard.LookCount >= looks || IsEnough(scope, other, heard)))
            {
                string kits = string.Join(", ", other.Presentation.Kits.Take(10).Select(static kit => kit.Value));
                var why = new Reason(ReconciliationReasons.ReadLaterElsewhere, ("session", other.Id.Value), ("kits", kits.Length > 0 ? kits : "no kit"), ("at", scope.Time(at)));
                last = new ElsewhereEvidence(why, at) { IsHeard = true };
            }
        }

        return last;
    }

    private static bool IsBeside(ReadSession own, ReadSession other)
        => own.Presentation.Station.Id == other.Presentation.Station.Id && own.From < other.To && other.From < own.To;

    private static bool IsExplained(ReadSession other, HashSet<KitId> own, DateTimeOffset first, DateTimeOffset last)
        => other.Presentation.NearbyKits.Any(near => own.Contains(near.Kit) && near.From <= first && (near.Until is not { } until || last <= until));

    private static bool IsEnough(ReconciliationScope scope, ReadSession session, TagEvidence heard)
    {
        var looks = new TagLooks(isHealthAside: true);
        looks.Add(session, heard);
        string? mounting = heard.LastSeen is { } at ? scope.Input.Tags.FindLive(heard.Tag, at)?.TagModel : null;
        PresenceEvidence presence = looks.ToEvidence(
            heard.Tag, scope.Policy.Sessions.MinimumPass, history: null, isExplainedElsewhere: false, (1, 1), scope.Policy.Presence.WeighsSilence, mounting, prior: null);
        return scope.Policy.Presence.Judge(presence).State == PresenceState.Accounted;
    }
}
