using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Holds;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Ledger;

/// <summary>
/// The facts of a ledger as a set: one entry for each different fact, and for the same fact recorded twice the one recorded first. A union of such sets is the same in any order and however often it is
/// made, and so is what follows from it.
/// </summary>
internal sealed class LedgerFacts
{
    // With the mark between and twelve digits of the digest within the 64 characters of an id.
    private const int NameHeadLength = 51;

    private readonly Dictionary<EntryId, LedgerEntry> single = [];
    private readonly Dictionary<EntryId, List<LedgerEntry>> disputed = [];

    internal int Count => single.Count + disputed.Values.Sum(static facts => facts.Count - 1);

    /// <summary>Every fact, those in dispute too, by the time of recording, the id and the digest.</summary>
    internal IEnumerable<LedgerEntry> All => single.Values.Where(entry => !disputed.ContainsKey(entry.Id)).Concat(disputed.Values.SelectMany(static facts => facts))
        .OrderBy(static entry => entry.RecordedAt.UtcTicks)
        .ThenBy(static entry => entry.Id.Value, StringComparer.Ordinal)
        .ThenBy(static entry => entry.ContentDigest.ToString(), StringComparer.Ordinal);

    /// <summary>The ids that stand for more than one fact.</summary>
    internal IEnumerable<KeyValuePair<EntryId, List<LedgerEntry>>> Disputes => disputed.OrderBy(static pair => pair.Key.Value, StringComparer.Ordinal);

    internal LedgerEntry? Find(EntryId id) => single.GetValueOrDefault(id);

    internal IReadOnlyList<LedgerEntry> FindAll(EntryId id) => disputed.TryGetValue(id, out List<LedgerEntry>? facts) ? facts : single.TryGetValue(id, out LedgerEntry? entry) ? [entry] : [];

    internal void Add(LedgerEntry entry)
    {
        if (single.TryAdd(entry.Id, entry))
        {
            return;
        }

        if (!disputed.TryGetValue(entry.Id, out List<LedgerEntry>? facts))
        {
            LedgerEntry known = single[entry.Id];
            if (known.ContentDigest == entry.ContentDigest)
            {
                single[entry.Id] = First(known, entry);
                return;
            }

            disputed.Add(entry.Id, facts = [known]);
        }

        int same = facts.FindIndex(fact => fact.ContentDigest == entry.ContentDigest);
        if (same >= 0)
        {
            facts[same] = First(facts[same], entry);
        }
        else
        {
            facts.Add(entry);
        }

        facts.Sort(static (left, right) => string.CompareOrdinal(left.ContentDigest.ToString(), right.ContentDigest.ToString()));
        single[entry.Id] = facts[0];
    }

    /// <summary>The facts that take effect: those not in dispute. Of disputed ones those that can only widen what must be looked for, each under a name of its own, so that no entry that names the disputed id ends it.</summary>
    /// <param name="withoutEffect">Where to add the facts that stand under such a name and so cannot be told from it, and those that end something before it is known to have happened.</param>
    internal IReadOnlyList<RecordEntry> Effective(List<(LedgerEntry Fact, Reason Why)>? withoutEffect = null)
    {
        var effective = new List<RecordEntry>();
        HashSet<EntryId> doubted = [.. disputed.Keys];
        var widening = new Queue<RecordEntry>(disputed.Values.SelectMany(static facts => facts).Select(static entry => entry.Content).Where(IsWidening));
        while (widening.TryDequeue(out RecordEntry? content))
        {
            EntryId name = NameOf(content);
            effective.Add(ContentJson.Renamed(content, name));
            if (single.TryGetValue(name, out LedgerEntry? other) && doubted.Add(name))
            {
                withoutEffect?.Add((other, new Reason(CustodyRules.IdTaken, ("id", name.Value))));
                if (IsWidening(other.Content))
                {
                    widening.Enqueue(other.Content);
                }
            }
        }

        foreach (LedgerEntry entry in single.Values.Where(entry => !doubted.Contains(entry.Id)))
        {
            if (entry.RecordedAt < entry.OccurredAt && IsNarrowing(entry.Content))
            {
                withoutEffect?.Add((entry, RecordedBefore(entry)));
            }
            else
            {
                effective.Add(entry.Content);
            }
        }

        return effective;
    }

    internal static Reason RecordedBefore(LedgerEntry entry) => new(LedgerRules.RecordedBefore, ("at", RecordTime.ToText(entry.OccurredAt)), ("recorded", RecordTime.ToText(entry.RecordedAt)));

    /// <summary>The name under which a disputed fact takes effect: its id and the beginning of its digest.</summary>
    internal static EntryId NameOf(RecordEntry content)
    {
        string id = content.Id.Value;
        string head = id.Length > NameHeadLength ? id[..NameHeadLength].TrimEnd() : id;
        return new EntryId(head + "~" + content.Digest.ToShortString());
    }

    private static bool IsWidening(RecordEntry content) => content is JobVisit or ToolUse or MissingDeclaration or HoldPlacement or FoundWithdrawal or DropRecord
        or ZoneEntry { Direction: CarriedDirection.In } or PersonalItem { Direction: CarriedDirection.In };

    // What ends something must be known to have happened: written ahead of its time it would end it by the lapse of time alone.
    private static bool IsNarrowing(RecordEntry content) =>
        content is HoldRelease or HoldNarrowing or SearchDiscontinuation or ItemRecovery or SignedReconciliation or KitTurnIn or ReceiptClosure or JobDeparture;

    private static LedgerEntry First(LedgerEntry one, LedgerEntry other)
    {
        // A time of recording before the fact itself cannot be right, so it is not the first.
        int order = (one.RecordedAt < one.OccurredAt).CompareTo(other.RecordedAt < other.OccurredAt);
        order = order != 0 ? order : one.RecordedAt.UtcTicks.CompareTo(other.RecordedAt.UtcTicks);
        order = order != 0 ? order : string.CompareOrdinal(one.Digest.ToString(), other.Digest.ToString());
        return order <= 0 ? one : other;
    }
}
