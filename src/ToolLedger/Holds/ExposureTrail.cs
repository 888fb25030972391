using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Kits;

namespace ToolLedger.Holds;

/// <summary>Where a kit or a tool was in a stretch of time, one item after the other, without a hole: what no entry tells stands as "between".</summary>
internal static class ExposureTrail
{
    internal static IEnumerable<ExposureItem> InOrder(IEnumerable<ExposureItem> items) => items.Distinct()
        .OrderBy(static item => item.From)
        .ThenBy(static item => item.Until ?? DateTimeOffset.MaxValue)
        .ThenBy(static item => item.Kind)
        .ThenBy(static item => item.Thing.ToString(), StringComparer.Ordinal)
        .ThenBy(static item => item.Entry.Value, StringComparer.Ordinal);

    /// <summary>A tool was on its receipts, and for the rest with one of its kits.</summary>
    internal static IEnumerable<ExposureItem> OfTool(
        CustodyRegister custody, IReadOnlyList<(ToolReceipt Receipt, ReceiptClosure? Closure)> receipts, IEnumerable<KitId> kits, DateTimeOffset? since, DateTimeOffset asOf)
    {
        var items = new List<ExposureItem>();
        DateTimeOffset? at = since;
        foreach ((ToolReceipt receipt, ReceiptClosure? closure) in receipts.Where(one => !(one.Closure?.At <= since)))
        {
            // The signature of the receiver ends the exposure of the giver: at that instant nothing of it is left.
            if (at is null || at < receipt.At)
            {
                AddKits(items, custody, kits, at, receipt.At);
            }

            AddReceipt(items, custody, receipt, closure, since, asOf);
            at = closure?.At ?? asOf;
            if (closure is null)
            {
                return InOrder(items);
            }
        }

        AddKits(items, custody, kits, at, asOf);
        return InOrder(items);
    }

    internal static IEnumerable<ExposureItem> OfKit(CustodyRegister custody, KitId kit, DateTimeOffset? since, DateTimeOffset asOf)
    {
        var items = new List<ExposureItem>();
        AddKits(items, custody, [kit], since, asOf);
        return InOrder(items);
    }

    /// <summary>What a receipt in dispute names: the tool can be there, and no closure can be told to be its own.</summary>
    internal static IEnumerable<ExposureItem> OfDisputed(CustodyRegister custody, ToolReceipt receipt, DateTimeOffset asOf)
    {
        var items = new List<ExposureItem>();
        AddReceipt(items, custody, receipt, closure: null, receipt.At, asOf);
        return items.Select(static item => item.Kind == ExposureKind.Receipt ? item with { Kind = ExposureKind.Said } : item);
    }

    /// <summary>Kits, and the kits that they were inside of.</summary>
    private static void AddKits(List<ExposureItem> items, CustodyRegister custody, IEnumerable<KitId> kits, DateTimeOffset? since, DateTimeOffset to)
    {
        if (since > to)
        {
            return;
        }

        foreach (KitId kit in custody.WithOuter(kits, since ?? DateTimeOffset.MinValue, to))
        {
            AddKit(items, custody, kit, since, to);
        }
    }

    private static void AddKit(List<ExposureItem> items, CustodyRegister custody, KitId id, DateTimeOffset? since, DateTimeOffset to)
    {
        var visits = custody.VisitsOf(id, since ?? DateTimeOffset.MinValue, to);
        foreach ((JobVisit visit, DateTimeOffset? until) in visits)
        {
            items.Add(new ExposureItem
            {
                Kind = ExposureKind.Visit,
                Thing = new AffectedThing(visit.Equipment, visit.Job, visit.Where),
                From = visit.At,
                Until = until,
                Holder = custody.HolderOf(id, visit.At),
                Entry = visit.Id,
            });
        }

        foreach (CustodySpan span in custody.HistoryOf(id, to))
        {
            AddBetween(items, span, visits, since, to);
        }
    }

    /// <summary>The parts of a span of custody in which the kit was at no job.</summary>
    private static void AddBetween(
        List<ExposureItem> items, CustodySpan span, IReadOnlyList<(JobVisit Visit, DateTimeOffset? Until)> visits, DateTimeOffset? since, DateTimeOffset to)
    {
        // Before the first record there is nothing to tell of.
        DateTimeOffset from = since > span.From ? since.Value : span.From;
        DateTimeOffset end = span.Until is { } until && until < to ? until : to;
        if (from == DateTimeOffset.MinValue)
        {
            return;
        }

        foreach ((JobVisit visit, DateTimeOffset? left) in visits.OrderBy(static one => one.Visit.At))
        {
            AddGap(items, span, from, visit.At < end ? visit.At : end);
            from = left is null ? end : left > from ? left.Value : from;
        }

        AddGap(items, span, from, end);
    }

    private static void AddGap(List<ExposureItem> items, CustodySpan span, DateTimeOffset from, DateTimeOffset until)
    {
        if (from < until)
        {
            items.Add(new ExposureItem
            {
                Kind = span.Holder.IsPerson ? ExposureKind.Between : ExposureKind.Stored,
                Thing = span.Holder.IsPerson ? default : new AffectedThing(default, default, span.Holder.Place),
                From = from,
                Until = until,
                Holder = span.Holder,
                Entry = span.Entry?.Id ?? default,
            });
        }
    }

    private static void AddReceipt(
        List<ExposureItem> items, CustodyRegister custody, ToolReceipt receipt, ReceiptClosure? closure, DateTimeOffset? since, DateTimeOffset asOf)
    {
        CustodyHolder holder = CustodyRegister.HolderOf(receipt);
        ToolLoan? loan = receipt as ToolLoan;
        items.Add(new ExposureItem
        {
            Kind = ExposureKind.Receipt,
            Thing = new AffectedThing(loan?.Equipment ?? default, loan?.Job ?? default, receipt.Where),
            From = receipt.At,
            Until = closure?.At,
            Holder = holder,
            Entry = receipt.Id,
        });
        if (loan is { ToKit.IsEmpty: false })
        {
            DateTimeOffset from = since > loan.At ? since.Value : loan.At;
            AddKits(items, custody, [loan.ToKit], from, closure?.At ?? asOf);
        }
    }
}
