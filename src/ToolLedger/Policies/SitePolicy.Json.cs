using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.Text.Json;
using ToolLedger.Calibration;
using ToolLedger.Custody;
using ToolLedger.Holds;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Policies;

public sealed partial record SitePolicy
{
    /// <summary>The schema a stored policy names.</summary>
    public const string Schema = "toolledger/site-policy/1";

    private static readonly JsonLimits Limits = JsonLimits.ForRecord(SiteCalendar.MaxChangeCount, 4 * 1024 * 1024);

    /// <summary>Reads a stored policy; whatever it leaves out has its default value.</summary>
    /// <param name="utf8Json">The JSON; at most 4 MiB.</param>
    /// <returns>The policy.</returns>
    /// <exception cref="RecordException">The bytes are not such a policy; the exception lists every issue.</exception>
    public static SitePolicy Parse(ReadOnlySpan<byte> utf8Json) =>
        TryParse(utf8Json, out SitePolicy? policy, out IReadOnlyList<RecordIssue> issues) ? policy : throw new RecordException(issues);

    /// <summary>Reads a stored policy, or says everything that is wrong with it. A member that is not known is refused: a misspelt setting must not fall back to its default in silence.</summary>
    /// <param name="utf8Json">The JSON; at most 4 MiB.</param>
    /// <param name="policy">The policy, or null if it is refused.</param>
    /// <param name="issues">Every issue, with its place as a JSON path; empty if the policy was read.</param>
    /// <returns>Whether the policy was read. Bad bytes never raise an exception.</returns>
    public static bool TryParse(ReadOnlySpan<byte> utf8Json, [NotNullWhen(true)] out SitePolicy? policy, out IReadOnlyList<RecordIssue> issues)
    {
        var found = new IssueList();
        issues = found;
        policy = null;
        if (!RecordJson.TryReadDocument(utf8Json, Schema, Limits, found, out JsonDocument? document))
        {
            return false;
        }

        using (document)
        {
            SitePolicy read = Read(new JsonFields(document.RootElement, "$", found), found);
            policy = found.Reported == 0 ? read : null;
        }

        return policy is not null;
    }

    /// <summary>Writes the policy as JSON: indented UTF-8, every setting in a fixed order, default or not.</summary>
    /// <returns>The bytes; the same policy gives the same bytes.</returns>
    public byte[] ToJson() => RecordJson.Write(writer =>
    {
        writer.WriteStartObject();
        writer.WriteString("schema", Schema);
        writer.WriteString("name", Name);
        writer.WritePropertyName("sessions");
        Sessions.WriteJson(writer);
        writer.WritePropertyName("presence");
        Presence.WriteJson(writer);
        writer.WritePropertyName("inventory");
        Inventory.WriteJson(writer);
        writer.WritePropertyName("custody");
        Custody.WriteJson(writer);
        writer.WritePropertyName("marks");
        Marks.WriteJson(writer);
        writer.WritePropertyName("calibration");
        Calibration.WriteJson(writer);
        writer.WritePropertyName("findings");
        Findings.WriteJson(writer);
        writer.WritePropertyName("holds");
        Holds.WriteJson(writer);
        writer.WritePropertyName("calendar");
        Calendar.WriteJson(writer);
        writer.WriteEndObject();
    });

    private static SitePolicy Read(JsonFields fields, IssueList issues)
    {
        fields.IsThere("schema");
        var policy = new SitePolicy
        {
            Name = fields.Text("name", Default.Name, MaxNameLength) ?? Default.Name,
            Sessions = Part("sessions", SessionPolicy.FromJson, Default.Sessions),
            Presence = Part("presence", PresencePolicy.FromJson, Default.Presence),
            Inventory = Part("inventory", InventoryPolicy.FromJson, Default.Inventory),
            Custody = Part("custody", CustodyPolicy.FromJson, Default.Custody),
            Marks = Part("marks", MarkFormat.FromJson, Default.Marks),
            Calibration = Part("calibration", CalibrationPolicy.FromJson, Default.Calibration),
            Findings = Part("findings", FindingPolicy.FromJson, Default.Findings),
            Holds = Part("holds", HoldPolicy.FromJson, Default.Holds),
            Calendar = Part("calendar", SiteCalendar.FromJson, Default.Calendar),
        };
        fields.End();
        return policy;

        T Part<T>(string name, Func<JsonElement, string, IssueList, T> read, T fallback) =>
            fields.TryGet(name, out JsonElement element) ? read(element, fields.PlaceOf(name), issues) : fallback;
    }
}
