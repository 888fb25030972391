using System;
using ToolLedger.Identifiers;
using ToolLedger.Records;

namespace ToolLedger.Tools;

/// <summary>Which tool a tag is on, from when until when.</summary>
/// <remarks>The start is included, the end excluded. Immutable and thread-safe; compared by reference.</remarks>
public sealed class TagBinding
{
    /// <summary>Longest name of a tag model, in characters.</summary>
    public const int MaxModelLength = 64;

    /// <summary>The tag as it answers; not empty.</summary>
    /// <exception cref="ArgumentException">The tag id is empty.</exception>
    public required TagId Tag
    {
        get;
        init => field = value.IsEmpty ? throw new ArgumentException("A binding needs a tag.", nameof(value)) : value;
    }

    /// <summary>The number of the tag's chip; empty if it was not recorded.</summary>
    public Tid Tid { get; init; }

    /// <summary>The tool; not empty.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required ToolId Tool
    {
        get;
        init => field = value.IsEmpty ? throw new ArgumentException("A binding needs a tool.", nameof(value)) : value;
    }

    /// <summary>From when, in the years 1970 to 2999; included.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The year is outside 1970 to 2999.</exception>
    public required DateTimeOffset From { get; init => field = RecordTime.Require(value, nameof(value)); }

    /// <summary>Until when, excluded; null while the tag is in use. <see cref="TagRegister"/> refuses an end that is not after the start.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The year is outside 1970 to 2999.</exception>
    public DateTimeOffset? Until { get; init => field = RecordTime.RequireOrNull(value, nameof(value)); }

    /// <summary>Who bound the tag; the default value means "not stated".</summary>
    public PersonId BoundBy { get; init; }

    /// <summary>Who checked, beside <see cref="BoundBy"/>, that the tag sits on the tool that bears the mark; the default value means that nobody did. <see cref="TagRegister"/> refuses the one who bound it.</summary>
    public PersonId CheckedBy { get; init; }

    /// <summary>The model of the tag and its mounting in the words of the site, 1 to 64 printable characters; null if not stated. Open lines whose tags
    /// share a model may share a cause.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public string? TagModel { get; init => field = RecordText.RequireOrNull(value, MaxModelLength, nameof(value)); }

    /// <summary>Is the binding in force then?</summary>
    /// <param name="at">The instant.</param>
    /// <returns>True from the start on, and before the end.</returns>
    public bool IsLiveAt(DateTimeOffset at) => From <= at && (Until is not { } until || at < until);

    /// <summary>Tag, tool and times.</summary>
    /// <returns>Text for people.</returns>
    public override string ToString() => Until is { } until
        ? $"{Tag} on {Tool.Value} from {RecordTime.ToText(From)} until {RecordTime.ToText(until)}"
        : $"{Tag} on {Tool.Value} from {RecordTime.ToText(From)}";
}
