using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Kits;

/// <content>Alternates of a tool, and sub-kits.</content>
internal sealed partial class ManifestLineRecord
{
    private void SetAlternates(ToolLine line)
    {
        if (line.Alternates.Count > 0)
        {
            Alternates = [.. line.Alternates.Select(ToolRecord.Of)];
        }
    }

    private void SetSubKit(SubKitLine line)
    {
        Kind = new JsonText(SubKitKind);
        Kit = new JsonText(line.Kit.Value);
        Revision = new JsonNumber(line.Revision);
        if (line.Case is { } subKitCase)
        {
            Case = ToolRecord.Of(subKitCase);
        }
    }

    private List<Tool> ReadAlternates(Tool? tool, RecordReader reader, LineCheck check, string place)
    {
        var alternates = new List<Tool>();
        if (Alternates is not { } records)
        {
            return alternates;
        }

        if (records.Count > ToolLine.MaxAlternateCount)
        {
            reader.Report(place + ".alternates", new Reason(RecordRules.TooLarge,
                ("limit", ToolLine.MaxAlternateCount.ToString(CultureInfo.InvariantCulture)), ("what", "alternates")));
            return alternates;
        }

        for (int i = 0; i < records.Count; i++)
        {
            string itemPlace = string.Create(CultureInfo.InvariantCulture, $"{place}.alternates[{i}]");
            if (reader.NotNull(records[i], itemPlace)?.Read(reader, itemPlace, ManifestRules.NoPieceCount, check.IsOnePieceByDefault) is { } alternate)
            {
                alternates.Add(alternate);
            }
        }

        // Only a whole list has the places that the check names.
        if (tool is not null && alternates.Count == records.Count)
        {
            check.Alternates(tool, alternates, reader.LineNumber, place);
        }

        return alternates;
    }

    private Func<int, string?, ManifestLine?> ReadSubKit(RecordReader reader, LineCheck check, string place)
    {
        string? kit = reader.Text(Kit, place, "kit", IdText.MaxLength);
        int? revision = reader.Int32(Revision, place, "revision", 1, KitManifest.MaxRevision);
        Tool? subKitCase = Case is null ? null : ReadTool(Case, "case", reader, check, place);
        if (kit is not null)
        {
            check.SubKit(new KitId(kit), reader.LineNumber, place);
        }

        return (number, location) => new SubKitLine
        {
            Number = number,
            Location = location,
            Kit = new KitId(kit!),
            Revision = revision!.Value,
            Case = subKitCase,
        };
    }
}
