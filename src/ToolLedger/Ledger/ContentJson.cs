using System.Text.Json;
using System.Text.Json.Nodes;
using ToolLedger.Custody;
using ToolLedger.Holds;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Ledger;

/// <summary>Reads facts of every room by the word for their kind.</summary>
internal static class ContentJson
{
    private const string Allowed = CustodyEntryJson.Allowed + ", missing-declaration, hold-placement, hold-narrowing, hold-notification, search-step, search-discontinuation, "
        + "found-declaration, found-withdrawal, left-in-place, drop-record, item-recovery, hold-release, signed-reconciliation, amendment, correction, refusal, stored-record";

    /// <summary>The fact, or null and issues.</summary>
    internal static RecordEntry? Read(JsonElement element, string place, IssueList issues)
    {
        int before = issues.Reported;
        var fields = new EntryFields(element, place, issues);
        if (CustodyEntryJson.TryRead(fields, out CustodyEntry? custody))
        {
            return custody;
        }

        if (HoldEntryJson.TryRead(fields, out HoldEntry? hold))
        {
            return hold;
        }

        switch (fields.Kind)
        {
            case SignedReconciliation.KindName:
                return SignedReconciliation.Read(fields);
            case Amendment.KindName:
                return Amendment.Read(fields);
            case EntryCorrection.KindName:
                return EntryCorrection.Read(fields);
            case EntryRefusal.KindName:
                return EntryRefusal.Read(fields);
            case StoredRecord.KindName:
                return StoredRecord.Read(fields);
        }

        if (issues.Reported == before)
        {
            fields.Report("kind", new Reason(RecordRules.UnknownWord, ("allowed", Allowed), ("found", SafeText.Excerpt(fields.Kind))));
        }

        return null;
    }

    /// <summary>The same fact under another id.</summary>
    internal static RecordEntry Renamed(RecordEntry content, EntryId id)
    {
        JsonObject members = JsonNode.Parse(content.Canonical())!.AsObject();
        members["id"] = id.Value;
        using JsonDocument document = JsonDocument.Parse(members.ToJsonString());
        var issues = new IssueList();
        return Read(document.RootElement, "$", issues) ?? throw new RecordException(issues);
    }
}
