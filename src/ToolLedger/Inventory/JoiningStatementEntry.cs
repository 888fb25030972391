using System;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Inventory;

/// <summary>A joining as stored: {"kit", "line", "parts", "wholes", "by", "at"}.</summary>
internal sealed class JoiningStatementEntry : JsonRecord
{
    public JsonText Kit { get; set; }

    public JsonNumber Line { get; set; }

    public JsonNumber Parts { get; set; }

    public JsonNumber Wholes { get; set; }

    public JsonText By { get; set; }

    public JsonText At { get; set; }

    internal static JoiningStatementEntry Of(JoiningStatement joining) => new()
    {
        Kit = new JsonText(joining.Kit.Value),
        Line = new JsonNumber(joining.LineNumber),
        Parts = new JsonNumber(joining.Parts),
        Wholes = new JsonNumber(joining.Wholes),
        By = new JsonText(joining.By.Value),
        At = new JsonText(RecordTime.ToText(joining.At)),
    };

    internal JoiningStatement? Read(RecordReader reader, string place)
    {
        reader.RefuseUnknown(this, place);
        string? kit = EntryMembers.Id(reader, Kit, place, "kit", InventoryRules.EntryWithoutKit);
        int? line = EntryMembers.Line(reader, Line, place, "line", InventoryRules.EntryWithoutLine);
        int? parts = reader.Int32(Parts, place, "parts", 2, EntryChecks.MaxPieceCount);
        int? wholes = reader.Int32(Wholes, place, "wholes", 1, EntryChecks.MaxPieceCount / 2);
        string? by = EntryMembers.Id(reader, By, place, "by", InventoryRules.EntryNotSigned);
        DateTimeOffset? at = EntryMembers.Time(reader, At, place, "at", InventoryRules.EntryWithoutTime);
        return kit is null || line is null || parts is null || wholes is null || by is null || at is null ? null : new JoiningStatement
        {
            Kit = new KitId(kit),
            LineNumber = line.Value,
            Parts = parts.Value,
            Wholes = wholes.Value,
            By = new PersonId(by),
            At = at.Value,
        };
    }
}
