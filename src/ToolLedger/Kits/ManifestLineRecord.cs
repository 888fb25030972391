using System;
using System.Collections.Generic;
using System.Text.Json;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Kits;

/// <summary>A line as stored: {"line", "kind", "location"?} and the members of its kind.</summary>
internal sealed partial class ManifestLineRecord : JsonRecord
{
    private const string ToolKind = "tool";
    private const string SetKind = "set";
    private const string CountedKind = "counted";
    private const string ConsumableKind = "consumable";
    private const string SubKitKind = "sub-kit";

    public JsonNumber Line { get; set; }

    public JsonText Kind { get; set; }

    public JsonText Location { get; set; }

    public ToolRecord? Tool { get; set => field = Note(value); }

    public ToolRecord? Container { get; set => field = Note(value); }

    public JsonText Contents { get; set; }

    public JsonNumber Total { get; set; }

    public JsonText Description { get; set; }

    public JsonNumber Quantity { get; set; }

    public JsonText Unit { get; set; }

    public List<ToolRecord?>? Alternates { get; set => field = Note(value); }

    public JsonText Kit { get; set; }

    public JsonNumber Revision { get; set; }

    public ToolRecord? Case { get; set => field = Note(value); }

    internal static ManifestLineRecord Of(ManifestLine line)
    {
        var record = new ManifestLineRecord { Line = new JsonNumber(line.Number), Location = new JsonText(line.Location) };
        switch (line)
        {
            case ToolLine tool:
                record.Kind = new JsonText(ToolKind);
                record.Tool = ToolRecord.Of(tool.Tool);
                record.SetAlternates(tool);
                break;
            case SetLine set:
                record.Kind = new JsonText(SetKind);
                record.Container = ToolRecord.Of(set.Container);
                record.Contents = new JsonText(set.Contents);
                record.Total = new JsonNumber(set.TotalCount);
                break;
            case SubKitLine subKit:
                record.SetSubKit(subKit);
                break;
            default:
                record.Kind = new JsonText(line is CountedLine ? CountedKind : ConsumableKind);
                record.Description = new JsonText(line.Description);
                record.Quantity = new JsonNumber(line.Expected.Amount);
                record.Unit = new JsonText(line.Expected.Unit.Value);
                break;
        }

        return record;
    }

    /// <summary>Null and issues if a member is missing or wrong.</summary>
    internal ManifestLine? Read(RecordReader reader, LineCheck check, string place)
    {
        int before = reader.Issues.Reported;
        if (Line.IsAbsent)
        {
            reader.Report(place, new Reason(ManifestRules.NoLineNumber));
        }

        int? number = reader.OptionalInt32(Line, place, "line", 1, ManifestLine.MaxNumber);
        reader.LineNumber = number;
        check.Number(number, place);
        reader.RefuseUnknown(this, place);
        string? location = reader.OptionalText(Location, place, "location", IdText.MaxLength);
        Func<int, string?, ManifestLine?>? make = ReadKind(reader, check, place);
        return reader.Issues.Reported > before || number is null ? null : make?.Invoke(number.Value, location);
    }

    private Func<int, string?, ManifestLine?>? ReadKind(RecordReader reader, LineCheck check, string place)
    {
        switch (Kind.Value)
        {
            case ToolKind:
                RefuseOthers(reader, place, isTool: true);
                Tool? tool = ReadTool(Tool, "tool", reader, check, place);
                List<Tool> alternates = ReadAlternates(tool, reader, check, place);
                return (number, location) => new ToolLine { Number = number, Location = location, Tool = tool!, Alternates = alternates };
            case SetKind:
                RefuseOthers(reader, place, isSet: true);
                return ReadSet(reader, check, place);
            case CountedKind or ConsumableKind:
                RefuseOthers(reader, place, isCounted: true);
                return ReadCounted(reader, check, place);
            case SubKitKind:
                RefuseOthers(reader, place, isSubKit: true);
                return ReadSubKit(reader, check, place);
            default:
                if (Kind.IsAbsent)
                {
                    reader.Missing(place, "kind");
                }
                else if (reader.IsString(Kind, place, "kind"))
                {
                    reader.Report(place + ".kind", new Reason(ManifestRules.UnknownKind,
                        ("allowed", "tool, set, counted, consumable or sub-kit"), ("found", SafeText.Excerpt(Kind.Value))));
                }

                return null;
        }
    }

    private Func<int, string?, ManifestLine?> ReadSet(RecordReader reader, LineCheck check, string place)
    {
        Tool? container = ReadTool(Container, "container", reader, check, place);
        string? contents = reader.Text(Contents, place, "contents", ManifestLine.MaxDescriptionLength);
        if (Total.Value is not { } total || decimal.Truncate(total) != total || total is < SetLine.MinTotalCount or > SetLine.MaxTotalCount)
        {
            reader.Report(place + ".total", new Reason(ManifestRules.SetTotal, ("range", "2 to 999"),
                ("found", Total.Found == JsonTokenType.Number ? RecordReader.TextOf(Total) : "none")));
            total = 0;
        }

        return (number, location) => new SetLine
        {
            Number = number,
            Location = location,
            Container = container!,
            Contents = contents!,
            TotalCount = (int)total,
        };
    }

    private Func<int, string?, ManifestLine?> ReadCounted(RecordReader reader, LineCheck check, string place)
    {
        string? description = reader.Text(Description, place, "description", ManifestLine.MaxDescriptionLength);
        bool isNumber = reader.IsNumber(Quantity, place, "quantity");
        if (isNumber && (Quantity.Value is not { } given || !Records.Quantity.IsAmount(given)))
        {
            reader.Report(place + ".quantity", new Reason(RecordRules.OutOfRange,
                ("range", "0 to 1,000,000 with at most 3 decimals"), ("found", RecordReader.TextOf(Quantity))));
        }

        string? unitText = reader.OptionalText(Unit, place, "unit", IdText.MaxLength);
        Unit unit = unitText is null ? default : new Unit(unitText);
        check.Quantity(isNumber || !Quantity.IsAbsent ? Quantity.Value ?? 1 : null, Unit.IsAbsent ? default : Records.Unit.Each, reader.LineNumber, place);
        bool isCounted = string.Equals(Kind.Value, CountedKind, StringComparison.Ordinal);
        return (number, location) =>
        {
            var quantity = new Quantity(Quantity.Value!.Value, unit);
            return isCounted
                ? new CountedLine { Number = number, Location = location, Description = description!, Quantity = quantity }
                : new ConsumableLine { Number = number, Location = location, Description = description!, Quantity = quantity };
        };
    }

    private static Tool? ReadTool(ToolRecord? record, string member, RecordReader reader, LineCheck check, string place)
    {
        if (record is null)
        {
            reader.Missing(place, member);
            return null;
        }

        if (record.PeekId() is { } id)
        {
            check.Tool(id, reader.LineNumber, place);
        }

        return record.Read(reader, $"{place}.{member}", ManifestRules.NoPieceCount, check.IsOnePieceByDefault);
    }

    /// <summary>Members of another kind are as unknown here as any other.</summary>
    private void RefuseOthers(RecordReader reader, string place, bool isTool = false, bool isSet = false, bool isCounted = false, bool isSubKit = false)
    {
        Refuse(!isTool && Tool is not null, "tool");
        Refuse(!isTool && Alternates is not null, "alternates");
        Refuse(!isSubKit && !Kit.IsAbsent, "kit");
        Refuse(!isSubKit && !Revision.IsAbsent, "revision");
        Refuse(!isSubKit && Case is not null, "case");
        Refuse(!isSet && Container is not null, "container");
        Refuse(!isSet && !Contents.IsAbsent, "contents");
        Refuse(!isSet && !Total.IsAbsent, "total");
        Refuse(!isCounted && !Description.IsAbsent, "description");
        Refuse(!isCounted && !Quantity.IsAbsent, "quantity");
        Refuse(!isCounted && !Unit.IsAbsent, "unit");

        void Refuse(bool condition, string member)
        {
            if (condition)
            {
                reader.Report(place, new Reason(RecordRules.UnknownMember, ("member", member)));
            }
        }
    }
}
