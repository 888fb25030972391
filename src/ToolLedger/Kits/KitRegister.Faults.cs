using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Linq;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Kits;

/// <content>Faults of the data that a register shows.</content>
public sealed partial class KitRegister
{
    private static bool IsTool(ManifestLine line, out ToolId tool)
    {
        tool = line.Tool?.Id ?? default;
        return !tool.IsEmpty;
    }

    private static bool IsSubKit(ManifestLine line, out KitId kit)
    {
        kit = line is SubKitLine subKit ? subKit.Kit : default;
        return !kit.IsEmpty;
    }

    private static bool IsMarked(ManifestLine line, [NotNullWhen(true)] out string? mark)
    {
        mark = line.Tool?.Mark;
        return mark is not null;
    }

    private static IEnumerable<Tool> ToolsOf(ManifestLine line)
    {
        IEnumerable<Tool> listed = line.Tool is { } tool ? [tool] : [];
        return line is ToolLine single ? listed.Concat(single.Alternates) : listed;
    }

    private IssueList FindFaults()
    {
        var faults = new IssueList();
        _tools.FindFaults(faults, static (tool, earlier, later, found) => found.Report(
            "$",
            new Reason(KitRules.ToolInTwoKits, ("tool", tool.Value), ("kit", earlier.Id.Value), ("otherKit", later.Id.Value), From(later)),
            later.FindLine(tool)?.Number));
        if (_subKits is not null)
        {
            _subKits.FindFaults(faults, static (subKit, earlier, later, found) => found.Report(
                "$",
                new Reason(KitRules.SubKitInTwoKits, ("subKit", subKit.Value), ("kit", earlier.Id.Value), ("otherKit", later.Id.Value), From(later)),
                later.Lines.First(line => IsSubKit(line, out KitId kit) && kit == subKit).Number));
            FindReferenceFaults(faults);
        }

        new LineEntries<string>(_manifests, _ends, IsMarked).FindFaults(faults, ReportMark);
        return faults;
    }

    private static void ReportMark(string mark, KitManifest earlier, KitManifest later, IssueList faults)
    {
        ManifestLine one = Marked(earlier, mark);
        ManifestLine other = Marked(later, mark);
        if (one.Tool!.Id != other.Tool!.Id)
        {
            faults.Report(
                "$",
                new Reason(KitRules.MarkInTwoKits, ("mark", mark), ("tool", one.Tool.Id.Value), ("kit", earlier.Id.Value),
                    ("otherTool", other.Tool.Id.Value), ("otherKit", later.Id.Value), From(later)),
                other.Number);
        }
    }

    private static ManifestLine Marked(KitManifest manifest, string mark) =>
        manifest.Lines.First(line => string.Equals(line.Tool?.Mark, mark, StringComparison.Ordinal));

    private void FindReferenceFaults(IssueList faults)
    {
        for (int index = 0; index < _manifests.Length; index++)
        {
            KitManifest manifest = _manifests[index];
            if (!manifest.HasSubKits || manifest.EffectiveFrom >= _ends[index])
            {
                continue;
            }

            foreach (SubKitLine line in manifest.Lines.OfType<SubKitLine>())
            {
                if (WhyNotInForce(line, manifest.EffectiveFrom, _ends[index]) is { } kind)
                {
                    faults.Report("$", new Reason(kind, ("revision", Text(manifest.Revision)), ("kit", manifest.Id.Value),
                        ("subRevision", Text(line.Revision)), ("subKit", line.Kit.Value)), line.Number);
                }
            }
        }
    }

    private ReasonKind? WhyNotInForce(SubKitLine line, DateTimeOffset from, DateTimeOffset until)
    {
        foreach (int index in _byKit.Of(line.Kit))
        {
            if (_manifests[index].Revision == line.Revision)
            {
                return _manifests[index].EffectiveFrom <= from && _ends[index] >= until ? null : KitRules.SubKitNotInForce;
            }
        }

        return KitRules.SubKitUnresolved;
    }

    private static (string Name, string Value) From(KitManifest later) => ("from", RecordTime.ToText(later.EffectiveFrom));

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
