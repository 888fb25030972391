using System;

namespace ToolLedger.Records;

/// <summary>A key under which another system knows the thing, such as a part, asset or work-order number.</summary>
/// <remarks>Carried along and shown, never interpreted. The default value is empty. Immutable and thread-safe.</remarks>
public readonly record struct ExternalId
{
    private readonly string? _system;
    private readonly string? _value;

    /// <summary>Makes an external id.</summary>
    /// <param name="system">Which system, 1 to 64 printable characters.</param>
    /// <param name="value">The key in that system, 1 to 64 printable characters.</param>
    /// <exception cref="ArgumentException">A text breaks that rule; the message says how.</exception>
    public ExternalId(string system, string value)
    {
        _system = IdText.Require(system, nameof(system));
        _value = IdText.Require(value, nameof(value));
    }

    /// <summary>Which system; an empty string for the default value.</summary>
    public string System => _system ?? "";

    /// <summary>The key in that system; an empty string for the default value.</summary>
    public string Value => _value ?? "";

    /// <summary>True for the default value.</summary>
    public bool IsEmpty => _system is null;

    /// <summary>System and key, joined by a colon.</summary>
    /// <returns>Text for people.</returns>
    public override string ToString() => IsEmpty ? "" : $"{System}:{Value}";
}
