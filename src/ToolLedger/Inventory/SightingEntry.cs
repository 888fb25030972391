using System;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Inventory;

/// <summary>A sighting as stored: {"tool", "markRead", "by", "at", "where", "inKit"?}.</summary>
internal sealed class SightingEntry : JsonRecord
{
    public JsonText Tool { get; set; }

    public JsonText MarkRead { get; set; }

    public JsonText By { get; set; }

    public JsonText At { get; set; }

    public JsonText Where { get; set; }

    public JsonText InKit { get; set; }

    internal static SightingEntry Of(Sighting sighting) => new()
    {
        Tool = new JsonText(sighting.Tool.Value),
        MarkRead = new JsonText(sighting.MarkRead),
        By = new JsonText(sighting.By.Value),
        At = new JsonText(RecordTime.ToText(sighting.At)),
        Where = new JsonText(sighting.Where.Value),
        InKit = new JsonText(sighting.InKit.IsEmpty ? null : sighting.InKit.Value),
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
        return tool is null || mark is null || by is null || at is null || where is null ? null : new Sighting
        {
            Tool = new ToolId(tool),
            MarkRead = mark,
            By = new PersonId(by),
            At = at.Value,
            Where = new Place(where),
            InKit = inKit is null ? default : new KitId(inKit),
        };
    }
}
