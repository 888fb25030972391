using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>When a kit was first shown to a reader or to people: a record about its list that was written after that came when it was known what is there.</summary>
internal static class PresentationSearch
{
    /// <summary>The start of the earliest session of the kit that still counts; without one the earliest count or sighting that does; else the as-of instant.</summary>
    public static DateTimeOffset Of(ReconciliationScope scope, KitManifest manifest, IReadOnlyList<SessionSummary> sessions)
    {
        DateTimeOffset[] shown = [.. sessions
            .Select(static summary => summary.Session)
            .Where(session => session.From <= scope.AsOf && scope.AsOf - session.To <= scope.Policy.Sessions.SessionAgeMax)
            .Select(static session => session.From)];
        return shown.Length > 0 ? shown.Min() : FirstWord(scope, manifest, []);
    }

    private static DateTimeOffset FirstWord(ReconciliationScope scope, KitManifest manifest, HashSet<KitId> asked)
    {
        asked.Add(manifest.Id);
        DateTimeOffset first = scope.AsOf;
        foreach (ManifestLine line in manifest.Lines)
        {
            foreach (DateTimeOffset at in WordsOf(scope, manifest, line))
            {
                first = at < first && scope.AsOf - at <= scope.Policy.Inventory.EvidenceAgeMax ? at : first;
            }

            if (line is SubKitLine subKit && !asked.Contains(subKit.Kit) && scope.Input.Kits.Find(subKit) is { } inner)
            {
                DateTimeOffset inside = FirstWord(scope, inner, asked);
                first = inside < first ? inside : first;
            }
        }

        return first;
    }

    private static IEnumerable<DateTimeOffset> WordsOf(ReconciliationScope scope, KitManifest manifest, ManifestLine line)
    {
        IEnumerable<DateTimeOffset> words = scope.People.CountsOf(manifest.Id, line.Number).Select(static count => count.At);
        foreach (Tool tool in ToolsOf(line))
        {
            words = words
                .Concat(scope.People.SightingsOf(tool.Id).Select(static sighting => sighting.At))
                .Concat(scope.People.PiecesOf(tool.Id).Select(static count => count.At));
        }

        return words;
    }

    private static IEnumerable<Tool> ToolsOf(ManifestLine line)
    {
        IEnumerable<Tool> own = line.Tool is { } tool ? [tool] : [];
        return line is ToolLine single ? own.Concat(single.Alternates) : own;
    }
}
