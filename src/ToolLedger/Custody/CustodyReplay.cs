using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Custody;

/// <summary>Lets custody entries take effect one after the other.</summary>
internal static class CustodyReplay
{
    private static readonly EntryOrder Order = new(static entry => RankOf((CustodyEntry)entry));

    internal static EntryReplay<CustodyEntry> Of(CustodyState state, IEnumerable<CustodyEntry> entries) =>
        new EntryReplay<CustodyEntry>(Order, new CustodyJudge(state).Apply).With(entries);

    private static int RankOf(CustodyEntry entry) => entry switch
    {
        ReceiptClosure => 0,
        KitTurnIn => 1,
        JobDeparture => 2,
        KitTransfer => 3,
        KitIssue => 4,
        ToolReceipt => 5,
        JobVisit => 6,
        ZoneEntry { Direction: CarriedDirection.In } => 7,
        PersonalItem { Direction: CarriedDirection.In } => 7,
        ZoneEntry or PersonalItem => 8,
        ZoneClosing => 9,
        _ => 10,
    };
}
