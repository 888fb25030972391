using System;
using System.Collections.Generic;
using System.Linq;
using FsCheck;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Testing.Simulation;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Generators;

/// <summary>The tags of a generated shift's tools: one or two live ones with or without a chip number, retired and retagged ones, tags that changed tools during the shift, tools without any.</summary>
public static class AnyShiftBindings
{
    private enum Tagging
    {
        Plain,
        WithChip,
        None,
        TwoTags,
        RetaggedBefore,
        RetaggedDuring,
        MovedDuring,
    }

    /// <summary>Generates the bindings of every tool on some manifests and of one spare.</summary>
    /// <param name="manifests">The manifests.</param>
    /// <returns>A generator of bindings that a register accepts.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="manifests"/> is null.</exception>
    public static Gen<TagBinding[]> Of(IReadOnlyList<KitManifest> manifests)
    {
        ArgumentNullException.ThrowIfNull(manifests);
        return ShiftPool.FromSeeds(chance => Draw(chance, manifests));
    }

    internal static TagBinding[] Draw(SplitMix64 chance, IReadOnlyList<KitManifest> manifests)
    {
        ToolId[] tools = [.. manifests.SelectMany(static manifest => manifest.Lines).SelectMany(AnyShiftParts.ToolsOf).Select(static tool => tool.Id).Append(ShiftPool.Spare).Distinct()];
        return [.. tools.SelectMany((tool, index) => Make(tool, index * ShiftPool.TagsPerTool, (Tagging)chance.Weighted(12, 4, 1, 2, 2, 1, 1), ShiftPool.Start.AddSeconds(chance.Among(-60, 900))))];
    }

    private static TagBinding[] Make(ToolId tool, int number, Tagging tagging, DateTimeOffset during)
    {
        DateTimeOffset longAgo = ShiftPool.Start.AddYears(-1), yesterday = ShiftPool.Start.AddDays(-1);
        return tagging switch
        {
            Tagging.None => [],
            Tagging.WithChip => [Bind(tool, number, longAgo, hasChip: true)],
            Tagging.TwoTags => [Bind(tool, number, longAgo), Bind(tool, number + 1, longAgo, hasChip: true)],
            Tagging.RetaggedBefore => [Bind(tool, number, longAgo, yesterday), Bind(tool, number + 1, yesterday)],
            Tagging.RetaggedDuring => [Bind(tool, number, longAgo, during), Bind(tool, number + 1, during)],
            Tagging.MovedDuring => [Bind(tool, number, longAgo, during), Bind(ShiftPool.Spare, number, during)],
            _ => [Bind(tool, number, longAgo)],
        };
    }

    private static TagBinding Bind(ToolId tool, int number, DateTimeOffset from, DateTimeOffset? until = null, bool hasChip = false) => new()
    {
        Tag = ShiftPool.Tag(number),
        Tid = hasChip ? ShiftPool.Chip(number) : default,
        Tool = tool,
        From = from,
        Until = until,
        BoundBy = new PersonId("S"),
    };
}
