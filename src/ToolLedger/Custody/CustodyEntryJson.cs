using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Custody;

/// <summary>Reads custody entries by the word for their kind.</summary>
internal static class CustodyEntryJson
{
    internal const string Allowed = "kit-issue, kit-turn-in, kit-transfer, tool-loan, laboratory-receipt, receipt-closure, dispatch-note, personal-item, "
        + "zone-entry, zone-closing, job-visit, job-departure, tool-use, tool-room-inventory";

    /// <summary>The entry, or null and issues. An entry of another room is one too.</summary>
    internal static CustodyEntry? Read(JsonElement element, string place, IssueList issues)
    {
        int before = issues.Reported;
        var fields = new EntryFields(element, place, issues);
        if (TryRead(fields, out CustodyEntry? entry))
        {
            return entry;
        }

        if (issues.Reported == before)
        {
            fields.Report("kind", new Reason(RecordRules.UnknownWord, ("allowed", Allowed), ("found", SafeText.Excerpt(fields.Kind))));
        }

        return null;
    }

    /// <summary>False if the kind is not of this room; true with null if a member is wrong.</summary>
    internal static bool TryRead(EntryFields fields, out CustodyEntry? entry)
    {
        bool isKnown = true;
        entry = null;
        switch (fields.Kind)
        {
            case CustodyKinds.KitIssue: entry = KitIssue.Read(fields); break;
            case CustodyKinds.KitTurnIn: entry = KitTurnIn.Read(fields); break;
            case CustodyKinds.KitTransfer: entry = KitTransfer.Read(fields); break;
            case CustodyKinds.ToolLoan: entry = ToolLoan.Read(fields); break;
            case CustodyKinds.LaboratoryReceipt: entry = LaboratoryReceipt.Read(fields); break;
            case CustodyKinds.ReceiptClosure: entry = ReceiptClosure.Read(fields); break;
            case CustodyKinds.DispatchNote: entry = DispatchNote.Read(fields); break;
            case CustodyKinds.PersonalItem: entry = PersonalItem.Read(fields); break;
            case CustodyKinds.ZoneEntry: entry = ZoneEntry.Read(fields); break;
            case CustodyKinds.ZoneClosing: entry = ZoneClosing.Read(fields); break;
            case CustodyKinds.JobVisit: entry = JobVisit.Read(fields); break;
            case CustodyKinds.JobDeparture: entry = JobDeparture.Read(fields); break;
            case CustodyKinds.ToolUse: entry = ToolUse.Read(fields); break;
            case CustodyKinds.ToolRoomInventory: entry = ToolRoomInventory.Read(fields); break;
            default: isKnown = false; break;
        }

        return isKnown;
    }
}
