using System;
using System.Text.Json;
using System.Text.Json.Serialization;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Inventory;

/// <summary>A piece count as stored: {"tool", "pieces", "by", "at", "witness"?}; pieces is null where the number is not known.</summary>
internal sealed class PieceCountEntry : JsonRecord
{
    public JsonText Tool { get; set; }

    [JsonConverter(typeof(PieceNumberConverter))]
    public JsonNumber Pieces { get; set; }

    public JsonText By { get; set; }

    public JsonText At { get; set; }

    public JsonText Witness { get; set; }

    internal static PieceCountEntry Of(PieceCount count) => new()
    {
        Tool = new JsonText(count.Tool.Value),
        Pieces = count.Pieces is { } pieces ? new JsonNumber(pieces) : new JsonNumber(null, JsonTokenType.Null),
        By = new JsonText(count.By.Value),
        At = new JsonText(RecordTime.ToText(count.At)),
        Witness = new JsonText(count.Witness.IsEmpty ? null : count.Witness.Value),
    };

    internal PieceCount? Read(RecordReader reader, string place)
    {
        reader.RefuseUnknown(this, place);
        int issuesBefore = reader.Issues.Reported;
        string? tool = EntryMembers.Id(reader, Tool, place, "tool", InventoryRules.PieceCountWithoutTool);
        int? pieces = EntryMembers.Pieces(reader, Pieces, place, "pieces");
        string? by = EntryMembers.Id(reader, By, place, "by", InventoryRules.PieceCountNotSigned);
        DateTimeOffset? at = EntryMembers.Time(reader, At, place, "at", InventoryRules.PieceCountWithoutTime);
        string? witness = reader.OptionalText(Witness, place, "witness", IdText.MaxLength);
        if (reader.Issues.Reported > issuesBefore || tool is null || by is null || at is null)
        {
            return null;
        }

        return new PieceCount
        {
            Tool = new ToolId(tool),
            Pieces = pieces,
            By = new PersonId(by),
            At = at.Value,
            Witness = witness is null ? default : new PersonId(witness),
        };
    }
}
