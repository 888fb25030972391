using System;

namespace ToolLedger.Records;

/// <summary>One thing that is wrong with a record: where, what and by which rule.</summary>
/// <remarks>Compared by place, reason and line number. Immutable and thread-safe.</remarks>
public sealed class RecordIssue : IEquatable<RecordIssue>
{
    /// <summary>Makes an issue.</summary>
    /// <param name="place">Where: a JSON path such as <c>$.lines[3].quantity</c>, or "line 12, column 4" of a text.</param>
    /// <param name="reason">What is wrong, by which rule.</param>
    /// <param name="lineNumber">Number of the manifest line or of the row of a file, if the issue belongs to one.</param>
    /// <exception cref="ArgumentNullException">The place or the reason is null.</exception>
    public RecordIssue(string place, Reason reason, int? lineNumber = null)
    {
        ArgumentNullException.ThrowIfNull(place);
        ArgumentNullException.ThrowIfNull(reason);
        Place = place;
        Reason = reason;
        LineNumber = lineNumber;
    }

    /// <summary>Where: a JSON path, or line and column of a text.</summary>
    public string Place { get; }

    /// <summary>What is wrong.</summary>
    public Reason Reason { get; }

    /// <summary>Number of the manifest line or row; null if the issue belongs to none.</summary>
    public int? LineNumber { get; }

    /// <summary>The stable code of the rule that was broken.</summary>
    public string Rule => Reason.Code;

    /// <inheritdoc/>
    public bool Equals(RecordIssue? other) =>
        other is not null && string.Equals(Place, other.Place, StringComparison.Ordinal)
        && LineNumber == other.LineNumber && Reason.Equals(other.Reason);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as RecordIssue);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Place, Reason, LineNumber);

    /// <summary>Place, sentence and rule; characters that are not printable are escaped.</summary>
    /// <returns>One line of text.</returns>
    public override string ToString() => $"{SafeText.Escape(Place)}: {Reason} ({Rule})";
}
