using System;
using ToolLedger.Records;

namespace ToolLedger.Tools;

/// <summary>A person doubts that a tag is on the tool it is bound to, and sets the binding apart until somebody has looked.</summary>
/// <remarks>
/// It concerns the binding of the tag to the tool that began last by <see cref="From"/>. While it stands, reads of the tag account for
/// nothing; a session that began before it was cleared never does, because nobody knows which tool wore the tag then. Where the doubt proves
/// right, end the binding and bind the tag anew instead of clearing. Immutable and thread-safe; compared by reference.
/// </remarks>
public sealed class BindingQuarantine
{
    /// <summary>Longest reason, in characters.</summary>
    public const int MaxReasonLength = 200;

    /// <summary>The tag as it answers; not empty.</summary>
    /// <exception cref="ArgumentException">The tag id is empty.</exception>
    public required TagId Tag
    {
        get;
        init => field = value.IsEmpty ? throw new ArgumentException("A quarantine needs a tag.", nameof(value)) : value;
    }

    /// <summary>The tool the tag is bound to; not empty.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required ToolId Tool
    {
        get;
        init => field = value.IsEmpty ? throw new ArgumentException("A quarantine needs a tool.", nameof(value)) : value;
    }

    /// <summary>From when the doubt stands, in the years 1970 to 2999; included.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The year is outside 1970 to 2999.</exception>
    public required DateTimeOffset From { get; init => field = RecordTime.Require(value, nameof(value)); }

    /// <summary>Who doubts it; not empty.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required PersonId By
    {
        get;
        init => field = value.IsEmpty ? throw new ArgumentException("A quarantine needs a name.", nameof(value)) : value;
    }

    /// <summary>Why, 1 to 200 printable characters.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public required string Reason { get; init => field = RecordText.Require(value, MaxReasonLength, nameof(value)); }

    /// <summary>When the tag was found to be on that tool after all; null while the doubt stands. <see cref="TagRegister"/> refuses a time that
    /// is not after <see cref="From"/>, and one without <see cref="ClearedBy"/> and <see cref="ClearedReason"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The year is outside 1970 to 2999.</exception>
    public DateTimeOffset? ClearedAt { get; init => field = RecordTime.RequireOrNull(value, nameof(value)); }

    /// <summary>Who cleared it; the default value while it stands.</summary>
    public PersonId ClearedBy { get; init; }

    /// <summary>Why it was cleared, 1 to 200 printable characters; null while it stands.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public string? ClearedReason { get; init => field = RecordText.RequireOrNull(value, MaxReasonLength, nameof(value)); }

    /// <summary>Does the doubt stand then?</summary>
    /// <param name="at">The instant.</param>
    /// <returns>True from its start on, and before it was cleared.</returns>
    public bool StandsAt(DateTimeOffset at) => From <= at && (ClearedAt is not { } cleared || at < cleared);

    /// <summary>Tag, tool, times and reason.</summary>
    /// <returns>Text for people.</returns>
    public override string ToString() => ClearedAt is { } cleared
        ? $"{Tag} on {Tool.Value} doubted from {RecordTime.ToText(From)} until {RecordTime.ToText(cleared)}: {Reason}"
        : $"{Tag} on {Tool.Value} doubted from {RecordTime.ToText(From)}: {Reason}";
}
