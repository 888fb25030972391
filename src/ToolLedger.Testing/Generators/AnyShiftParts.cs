using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Testing.Simulation;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Generators;

/// <summary>What makes the lists of a generated shift richer: alternates on some lines, and a box with lines of its own inside the kit.</summary>
internal static class AnyShiftParts
{
    internal static KitManifest[] Draw(SplitMix64 chance, KitManifest[] manifests)
    {
        bool hasBox = chance.OneIn(2);
        KitManifest subject = manifests[0];
        List<ManifestLine> lines = [.. subject.Lines.Select(line => line is ToolLine tool && chance.OneIn(4) ? WithAlternates(tool, chance.Among(1, 2)) : line)];
        var richer = new List<KitManifest>(manifests);
        if (hasBox)
        {
            lines.Add(Box(lines.Count + 1, hasCase: chance.OneIn(2)));
            int count = chance.Among(1, 3);
            richer.Add(new KitManifest(
                ShiftPool.Box,
                1,
                "invented box",
                ShiftPool.Start.AddDays(-30),
                subject.SignedBy,
                Enumerable.Range(1, count).Select(number => Inside(chance, number))));
        }

        richer[0] = new KitManifest(subject.Id, subject.Revision, subject.Title, subject.EffectiveFrom, subject.SignedBy, lines);
        return [.. richer];
    }

    /// <summary>Mostly a plain tool; sometimes one of two pieces, a set or something to be counted.</summary>
    private static ManifestLine Inside(SplitMix64 chance, int number) => chance.Weighted(8, 1, 1, 1) switch
    {
        0 => new ToolLine { Number = number, Tool = Named("W", number) },
        1 => new ToolLine { Number = number, Tool = Named("W", number, pieces: 2) },
        2 => new SetLine { Number = number, Container = Named("W", number), Contents = "bits", TotalCount = 4 },
        _ => new CountedLine { Number = number, Description = "pins", Quantity = new Quantity(3, Unit.Each) },
    };

    /// <summary>The tools that a line may show: the listed one and its alternates.</summary>
    internal static IEnumerable<Tool> ToolsOf(ManifestLine line)
    {
        IEnumerable<Tool> own = line.Tool is { } tool ? [tool] : [];
        return line is ToolLine single ? own.Concat(single.Alternates) : own;
    }

    private static ToolLine WithAlternates(ToolLine line, int count) => new()
    {
        Number = line.Number,
        Location = line.Location,
        Tool = line.Tool,
        Alternates = [.. Enumerable.Range(0, count).Select(i => Named("A", (10 * line.Number) + i))],
    };

    private static SubKitLine Box(int number, bool hasCase)
        => new() { Number = number, Kit = ShiftPool.Box, Revision = 1, Case = hasCase ? Named("C", 1) : null };

    private static Tool Named(string stem, int number, int pieces = 1)
    {
        string id = stem + number.ToString(CultureInfo.InvariantCulture);
        return new Tool { Id = new ToolId(id), Description = "tool " + id, Mark = id, PieceCount = pieces };
    }
}
