using System;
using System.Collections.Generic;
using System.Collections.ObjectModel;
using System.Linq;
using ToolLedger.Records;

namespace ToolLedger.Tools;

/// <summary>A hand, power or special tool under accountability.</summary>
/// <remarks>Immutable and thread-safe; compared by reference, because two descriptions of one tool may differ: compare <see cref="Id"/>.</remarks>
public sealed class Tool
{
    /// <summary>Longest description, in characters.</summary>
    public const int MaxDescriptionLength = 200;

    /// <summary>Longest mark, in characters.</summary>
    public const int MaxMarkLength = 32;

    /// <summary>Most pieces of one tool.</summary>
    public const int MaxPieceCount = 99;

    /// <summary>Most external ids of one tool.</summary>
    public const int MaxExternalIdCount = 16;

    /// <summary>The key of the tool; not empty.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required ToolId Id
    {
        get;
        init => field = value.IsEmpty ? throw new ArgumentException("A tool needs an id.", nameof(value)) : value;
    }

    /// <summary>What it is, 1 to 200 printable characters.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public required string Description
    {
        get;
        init => field = RecordText.Require(value, MaxDescriptionLength, nameof(value));
    }

    /// <summary>The permanent etched or labelled mark, 1 to 32 printable characters; null if it has none.</summary>
    /// <remarks>Tools of one kit may share a mark, so a mark does not always say which tool.</remarks>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public string? Mark { get; init => field = RecordText.RequireOrNull(value, MaxMarkLength, nameof(value)); }

    /// <summary>Separable parts, 1 to 99. The default is 1: the tool does not come apart in use.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is outside the range.</exception>
    public int PieceCount
    {
        get;
        init => field = value is >= 1 and <= MaxPieceCount
            ? value
            : throw new ArgumentOutOfRangeException(nameof(value), value, "A tool has 1 to 99 pieces.");
    } = 1;

    /// <summary>True if the tool measures and its calibration must be current. The default is false.</summary>
    public bool NeedsCalibration { get; init; }

    /// <summary>The class of tool in the words of the site, 1 to 64 printable characters; null if not stated.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public string? ToolClass { get; init => field = RecordText.RequireOrNull(value, IdText.MaxLength, nameof(value)); }

    /// <summary>The class within which tools may be swapped for each other, such as "oxygen", 1 to 64 printable characters; null (the default) for no class.</summary>
    /// <remarks>Tools set apart, as for oxygen work, must not mix with others (US Air Force Instruction 21-101 of 16 January 2020, paragraph 8.3.9). Compared ordinally.</remarks>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public string? SegregationClass { get; init => field = RecordText.RequireOrNull(value, IdText.MaxLength, nameof(value)); }

    /// <summary>Keys under which other systems know the tool, at most 16. The default is none.</summary>
    /// <exception cref="ArgumentException">There are more, one is empty, or one is listed twice.</exception>
    public IReadOnlyList<ExternalId> ExternalIds { get; init => field = Copy(value); } = [];

    /// <summary>Id and description.</summary>
    /// <returns>Text for people.</returns>
    public override string ToString() => $"{Id.Value} {Description}";

    private static ReadOnlyCollection<ExternalId> Copy(IReadOnlyList<ExternalId> value)
    {
        ArgumentNullException.ThrowIfNull(value);
        if (value.Count == 0)
        {
            return ReadOnlyCollection<ExternalId>.Empty;
        }

        if (value.Count > MaxExternalIdCount || value.Any(id => id.IsEmpty) || value.Distinct().Count() != value.Count)
        {
            throw new ArgumentException("External ids are at most 16, none empty, none twice.", nameof(value));
        }

        return Array.AsReadOnly(value.ToArray());
    }
}
