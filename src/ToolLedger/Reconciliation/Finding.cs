using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>Something worth knowing that stands beside the conclusions and changes none of them.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class Finding
{
    private const int MaxLinesNamed = 5;

    /// <summary>Makes a finding.</summary>
    /// <param name="level">What it is about.</param>
    /// <param name="reason">What was found.</param>
    /// <exception cref="ArgumentNullException"><paramref name="reason"/> is null.</exception>
    public Finding(FindingLevel level, Reason reason)
    {
        ArgumentNullException.ThrowIfNull(reason);
        Level = level;
        Reason = reason;
    }

    /// <summary>What it is about.</summary>
    public FindingLevel Level { get; }

    /// <summary>What was found.</summary>
    public Reason Reason { get; }

    /// <summary>The stable code of <see cref="Reason"/>.</summary>
    public string Code => Reason.Code;

    /// <summary>The lines of the kit's own manifest concerned, in line order; empty where none. A line inside a sub-kit concerns the sub-kit's.</summary>
    public IReadOnlyList<int> LineNumbers { get; init; } = [];

    /// <summary>The same lines by their numbers as reports print them, such as 7.3 for a line inside the sub-kit of line 7. The default is <see cref="LineNumbers"/> as text.</summary>
    public IReadOnlyList<string> LineLabels
    {
        get => field ?? [.. LineNumbers.Select(LineConclusion.Text)];
        init;
    }

    /// <summary>The tags concerned; empty where none.</summary>
    public IReadOnlyList<TagId> Tags { get; init; } = [];

    /// <summary>The session concerned, or null.</summary>
    public SessionId? Session { get; init; }

    /// <summary>The sentence of <see cref="Reason"/> behind the lines and the session concerned, as far as it does not name the session itself.</summary>
    /// <returns>One line of English text.</returns>
    public override string ToString()
    {
        string lines = LineLabels.Count switch
        {
            0 => "",
            <= MaxLinesNamed => (LineLabels.Count == 1 ? "line " : "lines ") + string.Join(", ", LineLabels),
            _ => FormattableString.Invariant($"lines {string.Join(", ", LineLabels.Take(MaxLinesNamed))} and {LineLabels.Count - MaxLinesNamed} more"),
        };
        string session = Session is { } heard && !Reason.Values.Any(value => string.Equals(value.Value, heard.Value, StringComparison.Ordinal)) ? "session " + heard.Value : "";
        string where = lines + (lines.Length > 0 && session.Length > 0 ? ", " : "") + session;
        return where.Length > 0 ? $"{where}: {Reason}" : Reason.ToString();
    }
}
