using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Records;

namespace ToolLedger.Tools;

/// <summary>A tool as stored: {"id", "description", "mark"?, "pieces", "needsCalibration"?, "toolClass"?, "segregationClass"?, "externalIds"?}.</summary>
internal sealed class ToolRecord : JsonRecord
{
    public JsonText Id { get; set; }

    public JsonText Description { get; set; }

    public JsonText Mark { get; set; }

    public JsonNumber Pieces { get; set; }

    public JsonFlag NeedsCalibration { get; set; }

    public JsonText ToolClass { get; set; }

    public JsonText SegregationClass { get; set; }

    public List<ExternalIdRecord?>? ExternalIds { get; set => field = Note(value); }

    internal static ToolRecord Of(Tool tool)
    {
        var record = new ToolRecord
        {
            Id = new JsonText(tool.Id.Value),
            Description = new JsonText(tool.Description),
            Mark = new JsonText(tool.Mark),
            Pieces = new JsonNumber(tool.PieceCount),
            NeedsCalibration = JsonFlag.WhenTrue(tool.NeedsCalibration),
            ToolClass = new JsonText(tool.ToolClass),
            SegregationClass = new JsonText(tool.SegregationClass),
        };
        if (tool.ExternalIds.Count > 0)
        {
            record.ExternalIds = [.. tool.ExternalIds.Select(ExternalIdRecord.Of)];
        }

        return record;
    }

    /// <summary>The id alone, for rules between lines; null if it is missing or wrong, which <see cref="Read"/> reports.</summary>
    internal ToolId? PeekId() => ToolId.TryCreate(Id.Value, out ToolId id) ? id : null;

    /// <summary>Null and issues if a member is missing or wrong.</summary>
    /// <param name="reader">Where issues go.</param>
    /// <param name="place">The place of the tool in the file.</param>
    /// <param name="noPieceCount">The rule for a number of pieces that is not stated, null or 0.</param>
    /// <param name="isOneByDefault">True where the caller has declared that a number that is not stated means 1.</param>
    internal Tool? Read(RecordReader reader, string place, ReasonKind noPieceCount, bool isOneByDefault)
    {
        int before = reader.Issues.Reported;
        reader.RefuseUnknown(this, place);
        string? id = reader.Text(Id, place, "id", IdText.MaxLength);
        string? description = reader.Text(Description, place, "description", Tool.MaxDescriptionLength);
        string? mark = reader.OptionalText(Mark, place, "mark", Tool.MaxMarkLength);
        string? toolClass = reader.OptionalText(ToolClass, place, "toolClass", IdText.MaxLength);
        string? segregationClass = reader.OptionalText(SegregationClass, place, "segregationClass", IdText.MaxLength);
        bool needsCalibration = reader.Flag(NeedsCalibration, place, "needsCalibration", fallback: false);
        int? pieces = ReadPieces(reader, place, noPieceCount, isOneByDefault);
        List<ExternalId> externalIds = ReadExternalIds(reader, place);
        return reader.Issues.Reported > before || id is null || description is null ? null : new Tool
        {
            Id = new ToolId(id),
            Description = description,
            Mark = mark,
            PieceCount = pieces ?? 1,
            NeedsCalibration = needsCalibration,
            ToolClass = toolClass,
            SegregationClass = segregationClass,
            ExternalIds = externalIds,
        };
    }

    private int? ReadPieces(RecordReader reader, string place, ReasonKind noPieceCount, bool isOneByDefault)
    {
        if ((Pieces.IsAbsent && !isOneByDefault) || Pieces.Found == System.Text.Json.JsonTokenType.Null || Pieces.Value == 0)
        {
            reader.Report(place + ".pieces", new Reason(noPieceCount, ("tool", SafeText.Excerpt(Id.Value)),
                ("range", "1 to " + Tool.MaxPieceCount.ToString(CultureInfo.InvariantCulture))));
            return null;
        }

        return reader.OptionalInt32(Pieces, place, "pieces", 1, Tool.MaxPieceCount);
    }

    private List<ExternalId> ReadExternalIds(RecordReader reader, string place)
    {
        var ids = new List<ExternalId>();
        if (ExternalIds is not { } records)
        {
            return ids;
        }

        if (records.Count > Tool.MaxExternalIdCount)
        {
            reader.Report(place + ".externalIds", new Reason(RecordRules.TooLarge,
                ("limit", Tool.MaxExternalIdCount.ToString(CultureInfo.InvariantCulture)), ("what", "external ids")));
            return ids;
        }

        for (int i = 0; i < records.Count; i++)
        {
            string itemPlace = string.Create(CultureInfo.InvariantCulture, $"{place}.externalIds[{i}]");
            ExternalId? id = reader.NotNull(records[i], itemPlace)?.Read(reader, itemPlace);
            if (id is { } read && ids.Contains(read))
            {
                reader.Report(itemPlace, new Reason(RecordRules.Duplicate, ("what", read.ToString())));
            }
            else if (id is { } fresh)
            {
                ids.Add(fresh);
            }
        }

        return ids;
    }
}
