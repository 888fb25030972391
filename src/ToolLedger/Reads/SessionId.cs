using System;
using System.Diagnostics.CodeAnalysis;
using ToolLedger.Records;

namespace ToolLedger.Reads;

/// <summary>The name of a read session, given by the host.</summary>
/// <remarks>1 to 64 characters without control characters and without white space at either end; compared character by
/// character. The default value is empty. Immutable.</remarks>
public readonly record struct SessionId
{
    private readonly string? _value;

    /// <summary>Takes a name.</summary>
    /// <param name="value">1 to 64 characters.</param>
    /// <exception cref="ArgumentException">The text is not such a name.</exception>
    public SessionId(string value) => _value = IdText.Require(value, nameof(value));

    /// <summary>The name; empty text for the default value.</summary>
    public string Value => _value ?? string.Empty;

    /// <summary>Whether this is the default value.</summary>
    public bool IsEmpty => _value is null;

    /// <summary>Takes a name, without an exception.</summary>
    /// <param name="value">The text.</param>
    /// <param name="id">The name, or the default value when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the text is such a name.</returns>
    public static bool TryCreate([NotNullWhen(true)] string? value, out SessionId id)
    {
        bool valid = IdText.IsValid(value);
        id = valid ? new SessionId(value!) : default;
        return valid;
    }

    /// <summary>The name.</summary>
    /// <returns>The text.</returns>
    public override string ToString() => Value;
}
