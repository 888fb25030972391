using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using ToolLedger.Kits;
using ToolLedger.Tools;

namespace ToolLedger.Tests.Interchange;

/// <summary>Writes lines of a manifest as a master inventory list in the library's own form, every field in quotation marks.</summary>
internal static class MasterListText
{
    private const string Header = "line,kind,location,tool,description,mark,pieces,needsCalibration,toolClass,segregationClass,quantity,unit,contents,total,subKit,subKitRevision";

    public static string Of(IEnumerable<ManifestLine> lines, string end)
    {
        var text = new StringBuilder(Header).Append(end);
        foreach (ManifestLine line in lines)
        {
            text.AppendJoin(',', Fields(line).Select(static field => "\"" + (field ?? "").Replace("\"", "\"\"", System.StringComparison.Ordinal) + "\"")).Append(end);
        }

        return text.ToString();
    }

    /// <summary>The line without what the form has no column for.</summary>
    public static ManifestLine Plain(ManifestLine line) => line switch
    {
        ToolLine tool => new ToolLine { Number = line.Number, Location = line.Location, Tool = Plain(tool.Tool) },
        SetLine set => new SetLine { Number = line.Number, Location = line.Location, Container = Plain(set.Container), Contents = set.Contents, TotalCount = set.TotalCount },
        SubKitLine subKit => new SubKitLine
        {
            Number = line.Number,
            Location = line.Location,
            Kit = subKit.Kit,
            Revision = subKit.Revision,
            Case = subKit.Case is { } part ? Plain(part) : null,
        },
        _ => line,
    };

    private static Tool Plain(Tool tool) => new()
    {
        Id = tool.Id,
        Description = tool.Description,
        Mark = tool.Mark,
        PieceCount = tool.PieceCount,
        NeedsCalibration = tool.NeedsCalibration,
        ToolClass = tool.ToolClass,
        SegregationClass = tool.SegregationClass,
    };

    private static string?[] Fields(ManifestLine line)
    {
        Tool? tool = line.Tool;
        bool isCounted = line is CountedLine or ConsumableLine;
        return
        [
            Text(line.Number),
            line switch { ToolLine => "tool", SetLine => "set", SubKitLine => "sub-kit", CountedLine => "counted", _ => "consumable" },
            line.Location,
            tool?.Id.Value,
            tool?.Description ?? (isCounted ? line.Description : null),
            tool?.Mark,
            tool is null ? null : Text(tool.PieceCount),
            tool is null ? null : tool.NeedsCalibration ? "true" : "false",
            tool?.ToolClass,
            tool?.SegregationClass,
            isCounted ? Text(line.Expected.Amount) : null,
            isCounted ? line.Expected.Unit.Value : null,
            (line as SetLine)?.Contents,
            line is SetLine set ? Text(set.TotalCount) : null,
            (line as SubKitLine)?.Kit.Value,
            line is SubKitLine subKit ? Text(subKit.Revision) : null,
        ];
    }

    private static string Text(decimal number) => number.ToString(CultureInfo.InvariantCulture);
}
