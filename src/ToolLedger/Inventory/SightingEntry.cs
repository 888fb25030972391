using System;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Inventory;

/// <summary>A sighting as stored: {"tool", "markRead", "by", "at", "where", "inKit"?, "alsoIdentifiedBy"?, "witness"?}.</summary>
internal sealed class SightingEntry : JsonRecord
{
    public JsonText Tool { get; set; }

    public JsonText MarkRead { get; set; }

    public JsonText By { get; set; }

    public JsonText At { get; set; }

    public JsonText Where { get; set; }

    public JsonText InKit { get; set; }

    public JsonText AlsoIdentifiedBy { get; set; }

    public JsonText Witness { get; set; }

    internal static SightingEntry Of(Sighting sighting) => new()
    {
        Tool = new JsonText(sighting.Tool.Value),
        MarkRead = new JsonText(sighting.MarkRead),
        By = new JsonText(sighting.By.Value),
        At = new JsonText(RecordTime.ToText(sighting.At)),
        Where = new JsonText(sighting.Where.Value),
        InKit = new JsonText(sighting.InKit.IsEmpty ? null : sighting.InKit.Value),
        AlsoIdentifiedBy = new JsonText(sighting.AlsoIdentifiedBy),
        Witness = new JsonText(sighting.Witness.IsEmpty ? null : sighting.Witness.Value),
    };

    internal Sighting? Read(RecordReader reader, string place)
    {
        reader.RefuseUnknown(this, place);
        string? tool = EntryMembers.Id(reader, Tool, place, "tool", InventoryRules.SightingWithoutTool);
        string? mark = EntryMembers.Mark(reader, MarkRead, place, "markRead");
        string? by = EntryMembers.Id(reader, By, place, "by", InventoryRules.SightingNotSigned);
        DateTimeOffset? at = EntryMembers.Time(reader, At, place, "at", InventoryRules.SightingWithoutTime);
        string? where = EntryMembers.Id(reader, Where, place, "where", InventoryRules.SightingWithoutPlace);
        string? inKit = reader.OptionalText(InKit, place, "inKit", IdText.MaxLength);
        string? also = reader.OptionalText(AlsoIdentifiedBy, place, "alsoIdentifiedBy", IdText.MaxLength);
        string? witness = reader.OptionalText(Witness, place, "witness", IdText.MaxLength);
        return tool is null || mark is null || by is null || at is null || where is null ? null : new Sighting
        {
            Tool = new ToolId(tool),
            MarkRead = mark,
            By = new PersonId(by),
            At = at.Value,
            Where = new Place(where),
            InKit = inKit is null ? default : new KitId(inKit),
            AlsoIdentifiedBy = also,
            Witness = witness is null ? default : new PersonId(witness),
        };
    }
}
