namespace ToolLedger.Custody;

/// <summary>The stable words for the kinds of custody entries.</summary>
internal static class CustodyKinds
{
    internal const string KitIssue = "kit-issue";
    internal const string KitTurnIn = "kit-turn-in";
    internal const string KitTransfer = "kit-transfer";
    internal const string ToolLoan = "tool-loan";
    internal const string LaboratoryReceipt = "laboratory-receipt";
    internal const string ReceiptClosure = "receipt-closure";
    internal const string DispatchNote = "dispatch-note";
    internal const string PersonalItem = "personal-item";
    internal const string ZoneEntry = "zone-entry";
    internal const string ZoneClosing = "zone-closing";
    internal const string JobVisit = "job-visit";
    internal const string JobDeparture = "job-departure";
    internal const string ToolUse = "tool-use";
    internal const string ToolRoomInventory = "tool-room-inventory";
}
