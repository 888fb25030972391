using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Records;

namespace ToolLedger.Kits;

/// <summary>What a kit, or one place in it, must contain, added up; and how much of it a reader can see.</summary>
/// <remarks>Immutable and thread-safe; compared by reference.</remarks>
public sealed class ManifestTotal
{
    internal ManifestTotal(string? location, IEnumerable<CountedPart> parts)
    {
        Location = location;
        CountedPart[] all = [.. parts];
        LineCount = all.Length;
        PieceCount = all.Sum(static part => part.PieceCount);
        TaggedLineCount = all.Count(static part => part.IsTagged);
        PeopleLineCount = all.Count(static part => part.NeedsPeople);
        Items = [.. all
            .Where(static part => part.Amount > 0)
            .GroupBy(static part => part.Unit)
            .OrderBy(static group => group.Key.Value, StringComparer.Ordinal)
            .Select(static group => new ItemTotal(group.Key, group.Sum(static part => part.Amount)))];
    }

    /// <summary>The drawer or place; null for the whole kit, and for lines that state no place.</summary>
    public string? Location { get; }

    /// <summary>Lines, the lines of sub-kits included.</summary>
    public int LineCount { get; }

    /// <summary>Items by unit, ordered by unit: a tool, a container and a case are one item each, a set counts its container and contents.</summary>
    /// <remarks>Amounts of different units cannot be added, so each unit stands for itself.</remarks>
    public IReadOnlyList<ItemTotal> Items { get; }

    /// <summary>Separable pieces of all tools, containers and cases; one for each that does not come apart.</summary>
    public int PieceCount { get; }

    /// <summary>Lines of which a reader can see something: the tool, container or case carries a live tag.</summary>
    public int TaggedLineCount { get; }

    /// <summary>Lines of which people must count or sight something: untagged, the contents of a set, pieces beside the tagged one.</summary>
    /// <remarks>A tagged set is among both: a reader sees its container, and people count what is in it.</remarks>
    public int PeopleLineCount { get; }

    /// <summary>One line's share of a total.</summary>
    internal readonly record struct CountedPart(string? Location, Unit Unit, decimal Amount, int PieceCount, bool IsTagged, bool NeedsPeople);

    /// <summary>The place, if one is stated, lines, items by unit, pieces, and how many lines a reader sees and people must look at.</summary>
    /// <returns>One line of English text.</returns>
    public override string ToString() =>
        $"{(Location is null ? "" : Location + ": ")}{CountText.Of(LineCount, "line")}, {string.Join(", ", Items)}, {CountText.Of(PieceCount, "piece")}; tags on {CountText.Of(TaggedLineCount, "line")}, people needed for {CountText.Of(PeopleLineCount, "line")}";
}
