using System;
using System.Diagnostics.CodeAnalysis;

namespace ToolLedger.Records;

/// <summary>The id of one recorded fact, given by whoever records it; the same fact recorded twice has the same id.</summary>
/// <remarks>
/// 1 to 64 characters, printable, without leading or trailing white space; compared ordinally, so "a" and "A" differ.
/// The default value is empty and means "not stated". Immutable and thread-safe.
/// </remarks>
public readonly record struct EntryId
{
    private readonly string? _value;

    /// <summary>Makes an entry id from its text.</summary>
    /// <param name="value">1 to 64 printable characters without leading or trailing white space.</param>
    /// <exception cref="ArgumentException">The text breaks that rule; the message says how.</exception>
    public EntryId(string value) => _value = IdText.Require(value, nameof(value));

    /// <summary>The text; an empty string for the default value.</summary>
    public string Value => _value ?? "";

    /// <summary>True for the default value.</summary>
    public bool IsEmpty => _value is null;

    /// <summary>Makes an entry id if the text is allowed.</summary>
    /// <param name="value">The text.</param>
    /// <param name="id">The entry id, or the default value.</param>
    /// <returns>False if the text is null, empty, longer than 64 characters, not printable or has white space at an end.</returns>
    public static bool TryCreate([NotNullWhen(true)] string? value, out EntryId id)
    {
        bool valid = IdText.IsValid(value);
        id = valid ? new EntryId(value!) : default;
        return valid;
    }

    /// <summary>The text itself.</summary>
    /// <returns><see cref="Value"/>.</returns>
    public override string ToString() => Value;
}
