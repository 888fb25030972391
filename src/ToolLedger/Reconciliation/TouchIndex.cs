using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>What was done with kits and tools, by custody (refused entries too) and by people's word; made once for many kits. Counts, seals and sightings inside the kit speak for it and are no touch.</summary>
internal sealed class TouchIndex
{
    private readonly ReconciliationScope scope;
    private readonly Dictionary<KitId, List<Touch>> ofKit = [];
    private readonly Dictionary<ToolId, List<Touch>> ofTool = [];
    private readonly List<Touch> ofAny = [];

    // Lines of one kit come after each other. A slot that another thread overwrites is only made again.
    private volatile Known? last;

    public TouchIndex(ReconciliationScope scope)
    {
        this.scope = scope;
        foreach (CustodyMention mention in CustodyMention.Of(scope.Input.Custody))
        {
            DateTimeOffset until = mention.Departed ?? mention.Until ?? (mention.Entry is JobVisit ? DateTimeOffset.MaxValue : mention.Entry.At);
            Add(new Touch(mention.Entry, mention.Entry.At, until), mention);
        }

        foreach (PersonEntry entry in EntryLog.KitEntries(scope.Input.Inventory).Where(static entry => entry.Entry is KitOpening or Annotation or ConsumableUse or Substitution))
        {
            Put(ofKit, entry.Kit, new Touch(entry.Entry, entry.At, entry.At));
        }

        foreach (PersonEntry entry in EntryLog.ToolEntries(scope.Input.Inventory).Where(static entry => entry.Entry is not PieceCount))
        {
            Put(ofTool, entry.Tool, new Touch(entry.Entry, entry.At, entry.At, SightedIn: entry.Kit));
        }
    }

    /// <summary>Whether anything but one entry was done with a kit, what holds it, what it holds or any of their tools, from one instant to another, both included.</summary>
    public bool WasTouched(KitTree part, CustodyEntry but, DateTimeOffset to)
    {
        foreach (Touch touch in TouchesOf(part.Subject))
        {
            if (touch.From <= to && touch.Until >= but.At && !ReferenceEquals(touch.Entry, but))
            {
                return true;
            }
        }

        return false;
    }

    private Touch[] TouchesOf(KitTree subject)
    {
        if (last is { } known && ReferenceEquals(known.Subject, subject))
        {
            return known.Touches;
        }

        // Whoever handles a box in the bag, or the bag around the box, could reach what is in it; also a bag that held the box once.
        KitId[] inside = [.. subject.All.Select(static part => part.Manifest.Id)];
        IEnumerable<KitId> kits = scope.Input.Custody.WithOuter(inside.Concat(inside.SelectMany(scope.HoldersOf)), DateTimeOffset.MinValue, scope.AsOf);
        IEnumerable<Touch> ofTools =
            from part in subject.All
            from line in part.Lines
            where line.Tool is not null
            from touch in ofTool.GetValueOrDefault(line.Tool!.Id) ?? []
            where touch.Entry is not Sighting || touch.SightedIn != part.Manifest.Id
            select touch;
        Touch[] touches = [.. ofAny, .. kits.SelectMany(kit => ofKit.GetValueOrDefault(kit) ?? []), .. ofTools];
        last = new Known(subject, touches);
        return touches;
    }

    private void Add(in Touch touch, CustodyMention mention)
    {
        if (mention.IsOfUnknown)
        {
            ofAny.Add(touch);
        }

        foreach (KitId kit in mention.Kits)
        {
            Put(ofKit, kit, touch);
        }

        foreach (ToolId tool in mention.Tools)
        {
            Put(ofTool, tool, touch);
        }
    }

    private static void Put<TKey>(Dictionary<TKey, List<Touch>> lists, TKey key, in Touch touch)
        where TKey : notnull
    {
        if (!lists.TryGetValue(key, out List<Touch>? list))
        {
            lists.Add(key, list = []);
        }

        list.Add(touch);
    }

    private sealed record Known(KitTree Subject, Touch[] Touches);
}
