using System;
using ToolLedger.Records;

namespace ToolLedger.Reads;

/// <summary>Somebody changed what stood around the station, such as moving a neighbour's bag away or turning a shelf: what was within reach before may be so no longer.</summary>
/// <remarks>A person's word, and no evidence for a tool. Between two passes it makes "was it only a tool nearby?" a question of its own in each, where a policy states a risk. Immutable and thread-safe; compared by value.</remarks>
public sealed record SurroundingsChange
{
    /// <summary>The longest description, in characters.</summary>
    public const int MaxWhatLength = 200;

    /// <summary>Makes an entry.</summary>
    /// <param name="at">When, in the years 1970 to 2999; when it was done, not when it was noted.</param>
    /// <param name="by">Who did it, or saw it done; not empty.</param>
    /// <param name="what">What was changed, 1 to 200 printable characters.</param>
    /// <exception cref="ArgumentException">Nobody is named, or the text breaks that rule.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The year is outside 1970 to 2999.</exception>
    public SurroundingsChange(DateTimeOffset at, PersonId by, string what)
    {
        At = RecordTime.Require(at, nameof(at));
        By = by.IsEmpty ? throw new ArgumentException("Somebody changed the surroundings: who?", nameof(by)) : by;
        What = RecordText.Require(what, MaxWhatLength, nameof(what));
    }

    /// <summary>When.</summary>
    public DateTimeOffset At { get; }

    /// <summary>Who did it, or saw it done.</summary>
    public PersonId By { get; }

    /// <summary>What was changed.</summary>
    public string What { get; }

    internal static int Compare(SurroundingsChange left, SurroundingsChange right)
    {
        int order = left.At.CompareTo(right.At);
        order = order != 0 ? order : string.CompareOrdinal(left.By.Value, right.By.Value);
        return order != 0 ? order : string.CompareOrdinal(left.What, right.What);
    }
}
