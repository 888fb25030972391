using System;
using System.Text.Json;
using System.Text.Json.Serialization;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Inventory;

/// <summary>A breakage as stored: {"tool", "pieces", "by", "at"}; pieces is null where the number is not known.</summary>
internal sealed class BreakageEntry : JsonRecord
{
    public JsonText Tool { get; set; }

    [JsonConverter(typeof(PieceNumberConverter))]
    public JsonNumber Pieces { get; set; }

    public JsonText By { get; set; }

    public JsonText At { get; set; }

    internal static BreakageEntry Of(Breakage breakage) => new()
    {
        Tool = new JsonText(breakage.Tool.Value),
        Pieces = breakage.Pieces is { } pieces ? new JsonNumber(pieces) : new JsonNumber(null, JsonTokenType.Null),
        By = new JsonText(breakage.By.Value),
        At = new JsonText(RecordTime.ToText(breakage.At)),
    };

    internal Breakage? Read(RecordReader reader, string place)
    {
        reader.RefuseUnknown(this, place);
        int issuesBefore = reader.Issues.Reported;
        string? tool = EntryMembers.Id(reader, Tool, place, "tool", InventoryRules.EntryWithoutTool);
        int? pieces = EntryMembers.Pieces(reader, Pieces, place, "pieces");
        string? by = EntryMembers.Id(reader, By, place, "by", InventoryRules.EntryNotSigned);
        DateTimeOffset? at = EntryMembers.Time(reader, At, place, "at", InventoryRules.EntryWithoutTime);
        return reader.Issues.Reported > issuesBefore || tool is null || by is null || at is null ? null : new Breakage
        {
            Tool = new ToolId(tool),
            Pieces = pieces,
            By = new PersonId(by),
            At = at.Value,
        };
    }
}
