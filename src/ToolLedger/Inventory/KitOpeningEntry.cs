using System;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Inventory;

/// <summary>An opening of a kit as stored: {"kit", "by", "at", "where"?}.</summary>
internal sealed class KitOpeningEntry : JsonRecord
{
    public JsonText Kit { get; set; }

    public JsonText By { get; set; }

    public JsonText At { get; set; }

    public JsonText Where { get; set; }

    internal static KitOpeningEntry Of(KitOpening opening) => new()
    {
        Kit = new JsonText(opening.Kit.Value),
        By = new JsonText(opening.By.Value),
        At = new JsonText(RecordTime.ToText(opening.At)),
        Where = new JsonText(opening.Where.IsEmpty ? null : opening.Where.Value),
    };

    internal KitOpening? Read(RecordReader reader, string place)
    {
        reader.RefuseUnknown(this, place);
        string? kit = EntryMembers.Id(reader, Kit, place, "kit", InventoryRules.EntryWithoutKit);
        string? by = EntryMembers.Id(reader, By, place, "by", InventoryRules.EntryNotSigned);
        DateTimeOffset? at = EntryMembers.Time(reader, At, place, "at", InventoryRules.EntryWithoutTime);
        string? where = reader.OptionalText(Where, place, "where", IdText.MaxLength);
        return kit is null || by is null || at is null ? null : new KitOpening
        {
            Kit = new KitId(kit),
            By = new PersonId(by),
            At = at.Value,
            Where = where is null ? default : new Place(where),
        };
    }
}
