using System;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Inventory;

/// <summary>A seal as stored: {"kit", "number", "inventoriedAt", "by", "at", "witness"?}.</summary>
internal sealed class SealRecordEntry : JsonRecord
{
    public JsonText Kit { get; set; }

    public JsonText Number { get; set; }

    public JsonText InventoriedAt { get; set; }

    public JsonText By { get; set; }

    public JsonText At { get; set; }

    public JsonText Witness { get; set; }

    internal static SealRecordEntry Of(SealRecord seal) => new()
    {
        Kit = new JsonText(seal.Kit.Value),
        Number = new JsonText(seal.Number),
        InventoriedAt = new JsonText(RecordTime.ToText(seal.InventoriedAt)),
        By = new JsonText(seal.By.Value),
        At = new JsonText(RecordTime.ToText(seal.At)),
        Witness = new JsonText(seal.Witness.IsEmpty ? null : seal.Witness.Value),
    };

    internal SealRecord? Read(RecordReader reader, string place)
    {
        reader.RefuseUnknown(this, place);
        string? kit = EntryMembers.Id(reader, Kit, place, "kit", InventoryRules.EntryWithoutKit);
        string? number = reader.Text(Number, place, "number", IdText.MaxLength);
        DateTimeOffset? inventoriedAt = EntryMembers.Time(reader, InventoriedAt, place, "inventoriedAt", InventoryRules.EntryWithoutTime);
        string? by = EntryMembers.Id(reader, By, place, "by", InventoryRules.EntryNotSigned);
        DateTimeOffset? at = EntryMembers.Time(reader, At, place, "at", InventoryRules.EntryWithoutTime);
        string? witness = reader.OptionalText(Witness, place, "witness", IdText.MaxLength);
        return kit is null || number is null || inventoriedAt is null || by is null || at is null ? null : new SealRecord
        {
            Kit = new KitId(kit),
            Number = number,
            InventoriedAt = inventoriedAt.Value,
            By = new PersonId(by),
            At = at.Value,
            Witness = witness is null ? default : new PersonId(witness),
        };
    }
}
