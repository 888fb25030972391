using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Presence;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>The sentences that state the bases that hold, also beside a lower verdict.</summary>
internal sealed class LineSentences(ReconciliationScope scope, KitTree tree, SealSearch seals)
{
    public void AddTo(List<Reason> list, in LineFacts facts)
    {
        if (facts.Sighting is { } sighting)
        {
            list.Add(new Reason(
                ReconciliationReasons.Sighted, ("by", sighting.By.Value), ("at", scope.Time(sighting.At)), ("where", sighting.Where.Value), ("mark", sighting.MarkRead)));
        }

        if (facts is { Count: { } count, Counted: { } counted })
        {
            list.Add(new Reason(
                ReconciliationReasons.Counted,
                ("counted", counted.Amount.ToString("0.###", CultureInfo.InvariantCulture)),
                ("expected", facts.Expected.ToString()),
                ("by", count.By.Value),
                ("at", scope.Time(count.At))));
        }

        if (facts.Balance is { JobCount: > 0 } balance)
        {
            list.Add(BalanceReason(balance));
        }

        if (facts is { Pieces: { Pieces: { } pieces } record, Line.Tool: { } tool })
        {
            list.Add(new Reason(
                ReconciliationReasons.PiecesCounted,
                ("counted", pieces.ToString(CultureInfo.InvariantCulture)),
                ("expected", Math.Max(tool.PieceCount, facts.PiecesEstablished).ToString(CultureInfo.InvariantCulture)),
                ("by", record.By.Value),
                ("at", scope.Time(record.At))));
        }

        AddOfSubKits(facts, list);
        if (facts.Presence is { State: PresenceState.Accounted } presence && facts.ReadsWithheld is null)
        {
            list.AddRange(presence.Reasons);
        }
    }

    private void AddOfSubKits(in LineFacts facts, List<Reason> list)
    {
        if (facts.Receipt is { } receipt)
        {
            list.Add(scope.Receipts.Accepted(receipt));
        }

        if (facts.Seal is not null)
        {
            list.Add(seals.Accepted());
        }

        if (tree.SwapOf(facts.Line) is { } swap)
        {
            list.Add(new Reason(
                SealReasons.Substituted,
                ("tool", swap.Listed.Tool.Id.Value),
                ("at", scope.Time(swap.Record.At)),
                ("by", swap.Record.By.Value),
                ("reason", swap.Record.Reason)));
        }

        if (facts.Inner.Count > 0 && facts.Inner.All(static inner => inner.IsAccounted))
        {
            list.Add(new Reason(ReconciliationReasons.SubKitWhole, ("total", LineConclusion.Text(facts.Inner.Sum(static inner => inner.WithInner().Count())))));
        }
    }

    private static Reason BalanceReason(ConsumableBalance balance)
    {
        return new Reason(
            PeopleReasons.Balance,
            ("issued", Text(balance.Issued)),
            ("used", Text(balance.Used)),
            ("returned", Text(balance.Returned)),
            ("scrapped", Text(balance.Scrapped)),
            ("unexplained", Text(balance.Unexplained)),
            ("unit", balance.Unit.Value),
            ("jobs", balance.JobCount.ToString(CultureInfo.InvariantCulture)));

        static string Text(decimal amount) => amount.ToString("0.###", CultureInfo.InvariantCulture);
    }
}
