using System;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Inventory;

/// <summary>A look at a seal as stored: {"kit", "numberRead", "intact", "by", "at"}.</summary>
internal sealed class SealCheckEntry : JsonRecord
{
    public JsonText Kit { get; set; }

    public JsonText NumberRead { get; set; }

    public JsonFlag Intact { get; set; }

    public JsonText By { get; set; }

    public JsonText At { get; set; }

    internal static SealCheckEntry Of(SealCheck check) => new()
    {
        Kit = new JsonText(check.Kit.Value),
        NumberRead = new JsonText(check.NumberRead),
        Intact = new JsonFlag(check.IsIntact, check.IsIntact ? System.Text.Json.JsonTokenType.True : System.Text.Json.JsonTokenType.False),
        By = new JsonText(check.By.Value),
        At = new JsonText(RecordTime.ToText(check.At)),
    };

    internal SealCheck? Read(RecordReader reader, string place)
    {
        reader.RefuseUnknown(this, place);
        string? kit = EntryMembers.Id(reader, Kit, place, "kit", InventoryRules.EntryWithoutKit);
        string? number = reader.Text(NumberRead, place, "numberRead", IdText.MaxLength);
        if (Intact.IsAbsent)
        {
            reader.Missing(place, "intact");
        }

        bool intact = reader.Flag(Intact, place, "intact", fallback: false);
        string? by = EntryMembers.Id(reader, By, place, "by", InventoryRules.EntryNotSigned);
        DateTimeOffset? at = EntryMembers.Time(reader, At, place, "at", InventoryRules.EntryWithoutTime);
        return kit is null || number is null || by is null || at is null ? null : new SealCheck
        {
            Kit = new KitId(kit),
            NumberRead = number,
            IsIntact = intact,
            By = new PersonId(by),
            At = at.Value,
        };
    }
}
