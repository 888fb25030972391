using System;
using System.Diagnostics.CodeAnalysis;

namespace ToolLedger.Records;

/// <summary>What a quantity counts in: each, piece, spool, metre. Units are compared, never converted.</summary>
/// <remarks>
/// 1 to 64 characters, printable, without leading or trailing white space; compared ordinally, so "a" and "A" differ.
/// The default value is empty and means "not stated". Immutable and thread-safe.
/// </remarks>
public readonly record struct Unit
{
    private readonly string? _value;

    /// <summary>Makes the unit from its text.</summary>
    /// <param name="value">1 to 64 printable characters without leading or trailing white space.</param>
    /// <exception cref="ArgumentException">The text breaks that rule; the message says how.</exception>
    public Unit(string value) => _value = IdText.Require(value, nameof(value));

    /// <summary>Whole things: one tool, one set member, one rag.</summary>
    public static Unit Each { get; } = new("each");

    /// <summary>Separable parts of one tool.</summary>
    public static Unit Piece { get; } = new("piece");

    /// <summary>The text; an empty string for the default value.</summary>
    public string Value => _value ?? "";

    /// <summary>True for the default value.</summary>
    public bool IsEmpty => _value is null;

    /// <summary>Makes the unit if the text is allowed.</summary>
    /// <param name="value">The text.</param>
    /// <param name="unit">The unit, or the default value.</param>
    /// <returns>False if the text is null, empty, longer than 64 characters, not printable or has white space at an end.</returns>
    public static bool TryCreate([NotNullWhen(true)] string? value, out Unit unit)
    {
        bool valid = IdText.IsValid(value);
        unit = valid ? new Unit(value!) : default;
        return valid;
    }

    /// <summary>The text itself.</summary>
    /// <returns><see cref="Value"/>.</returns>
    public override string ToString() => Value;
}
