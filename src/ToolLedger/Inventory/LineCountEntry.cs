using System;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Inventory;

/// <summary>A count of a line as stored: {"kit", "line", "quantity", "unit", "by", "at", "witness"?, "parts"?}.</summary>
internal sealed class LineCountEntry : JsonRecord
{
    public JsonText Kit { get; set; }

    public JsonNumber Line { get; set; }

    public JsonNumber Quantity { get; set; }

    public JsonText Unit { get; set; }

    public JsonText By { get; set; }

    public JsonText At { get; set; }

    public JsonText Witness { get; set; }

    public JsonNumber Parts { get; set; }

    internal static LineCountEntry Of(LineCount count) => new()
    {
        Kit = new JsonText(count.Kit.Value),
        Line = new JsonNumber(count.LineNumber),
        Quantity = new JsonNumber(count.Quantity.Amount),
        Unit = new JsonText(count.Quantity.Unit.Value),
        By = new JsonText(count.By.Value),
        At = new JsonText(RecordTime.ToText(count.At)),
        Witness = new JsonText(count.Witness.IsEmpty ? null : count.Witness.Value),
        Parts = count.Parts == 0 ? default : new JsonNumber(count.Parts),
    };

    internal LineCount? Read(RecordReader reader, string place)
    {
        reader.RefuseUnknown(this, place);
        string? kit = EntryMembers.Id(reader, Kit, place, "kit", InventoryRules.CountWithoutKit);
        int? line = EntryMembers.Line(reader, Line, place, "line", InventoryRules.CountWithoutLine);
        decimal? amount = EntryMembers.Amount(reader, Quantity, place, "quantity");
        string? unit = EntryMembers.Id(reader, Unit, place, "unit", InventoryRules.CountWithoutUnit);
        string? by = EntryMembers.Id(reader, By, place, "by", InventoryRules.CountNotSigned);
        DateTimeOffset? at = EntryMembers.Time(reader, At, place, "at", InventoryRules.CountWithoutTime);
        string? witness = reader.OptionalText(Witness, place, "witness", IdText.MaxLength);
        int? parts = Parts.IsAbsent ? 0 : reader.OptionalInt32(Parts, place, "parts", 0, EntryChecks.MaxPieceCount);
        if (kit is null || line is null || amount is null || unit is null || by is null || at is null || parts is null)
        {
            return null;
        }

        return new LineCount
        {
            Kit = new KitId(kit),
            LineNumber = line.Value,
            Quantity = new Quantity(amount.Value, new Unit(unit)),
            By = new PersonId(by),
            At = at.Value,
            Witness = witness is null ? default : new PersonId(witness),
            Parts = parts.Value,
        };
    }
}
