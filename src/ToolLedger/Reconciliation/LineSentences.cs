using System;
using System.Collections.Generic;
using System.Globalization;
using ToolLedger.Presence;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>The sentences that state the bases that hold, also beside a lower verdict.</summary>
internal sealed class LineSentences(ReconciliationScope scope)
{
    public List<Reason> Of(in LineFacts facts)
    {
        var list = new List<Reason>();
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

        if (facts.Presence is { State: PresenceState.Accounted } presence && facts.ReadsWithheld is null)
        {
            list.AddRange(presence.Reasons);
        }

        return list;
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
