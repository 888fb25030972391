using System;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Inventory;

/// <summary>A substitution as stored: {"kit", "line", "inPlace", "reason", "by", "at"}.</summary>
internal sealed class SubstitutionEntry : JsonRecord
{
    public JsonText Kit { get; set; }

    public JsonNumber Line { get; set; }

    public JsonText InPlace { get; set; }

    public JsonText Reason { get; set; }

    public JsonText By { get; set; }

    public JsonText At { get; set; }

    internal static SubstitutionEntry Of(Substitution substitution) => new()
    {
        Kit = new JsonText(substitution.Kit.Value),
        Line = new JsonNumber(substitution.LineNumber),
        InPlace = new JsonText(substitution.InPlace.Value),
        Reason = new JsonText(substitution.Reason),
        By = new JsonText(substitution.By.Value),
        At = new JsonText(RecordTime.ToText(substitution.At)),
    };

    internal Substitution? Read(RecordReader reader, string place)
    {
        reader.RefuseUnknown(this, place);
        string? kit = EntryMembers.Id(reader, Kit, place, "kit", InventoryRules.EntryWithoutKit);
        int? line = EntryMembers.Line(reader, Line, place, "line", InventoryRules.EntryWithoutLine);
        string? inPlace = EntryMembers.Id(reader, InPlace, place, "inPlace", InventoryRules.EntryWithoutTool);
        string? reason = reader.Text(Reason, place, "reason", Substitution.MaxReasonLength);
        string? by = EntryMembers.Id(reader, By, place, "by", InventoryRules.EntryNotSigned);
        DateTimeOffset? at = EntryMembers.Time(reader, At, place, "at", InventoryRules.EntryWithoutTime);
        return kit is null || line is null || inPlace is null || reason is null || by is null || at is null ? null : new Substitution
        {
            Kit = new KitId(kit),
            LineNumber = line.Value,
            InPlace = new ToolId(inPlace),
            Reason = reason,
            By = new PersonId(by),
            At = at.Value,
        };
    }
}
