using System;
using ToolLedger.Records;

namespace ToolLedger.Tools;

/// <summary>A quarantine as stored: {"tag", "tool", "from", "by", "reason", "clearedAt"?, "clearedBy"?, "clearedReason"?}.</summary>
internal sealed class BindingQuarantineRecord : JsonRecord
{
    public JsonText Tag { get; set; }

    public JsonText Tool { get; set; }

    public JsonText From { get; set; }

    public JsonText By { get; set; }

    public JsonText Reason { get; set; }

    public JsonText ClearedAt { get; set; }

    public JsonText ClearedBy { get; set; }

    public JsonText ClearedReason { get; set; }

    internal static BindingQuarantineRecord Of(BindingQuarantine quarantine) => new()
    {
        Tag = new JsonText(quarantine.Tag.ToString()),
        Tool = new JsonText(quarantine.Tool.Value),
        From = new JsonText(RecordTime.ToText(quarantine.From)),
        By = new JsonText(quarantine.By.Value),
        Reason = new JsonText(quarantine.Reason),
        ClearedAt = new JsonText(quarantine.ClearedAt is { } cleared ? RecordTime.ToText(cleared) : null),
        ClearedBy = new JsonText(quarantine.ClearedBy.IsEmpty ? null : quarantine.ClearedBy.Value),
        ClearedReason = new JsonText(quarantine.ClearedReason),
    };

    /// <summary>Null and issues if a member is missing or wrong.</summary>
    internal BindingQuarantine? Read(RecordReader reader, string place)
    {
        int before = reader.Issues.Reported;
        reader.RefuseUnknown(this, place);
        TagId tag = TagBindingRecord.ReadTag(Tag, reader, place);
        string? tool = reader.Text(Tool, place, "tool", IdText.MaxLength);
        DateTimeOffset? from = reader.Time(From, place, "from");
        string? by = reader.Text(By, place, "by", IdText.MaxLength);
        string? reason = reader.Text(Reason, place, "reason", BindingQuarantine.MaxReasonLength);
        DateTimeOffset? clearedAt = reader.OptionalTime(ClearedAt, place, "clearedAt");
        string? clearedBy = reader.OptionalText(ClearedBy, place, "clearedBy", IdText.MaxLength);
        string? clearedReason = reader.OptionalText(ClearedReason, place, "clearedReason", BindingQuarantine.MaxReasonLength);
        return reader.Issues.Reported > before ? null : new BindingQuarantine
        {
            Tag = tag,
            Tool = new ToolId(tool!),
            From = from!.Value,
            By = new PersonId(by!),
            Reason = reason!,
            ClearedAt = clearedAt,
            ClearedBy = clearedBy is null ? default : new PersonId(clearedBy),
            ClearedReason = clearedReason,
        };
    }
}
