using System;

namespace ToolLedger.Records;

/// <summary>Who signed, when, and in which role.</summary>
/// <remarks>Equal when person, instant, offset and role are equal. Immutable and thread-safe.</remarks>
public sealed class Signature : IEquatable<Signature>
{
    /// <summary>The person; not empty.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required PersonId By
    {
        get;
        init => field = value.IsEmpty ? throw new ArgumentException("A signature needs a person.", nameof(value)) : value;
    }

    /// <summary>When, in the years 1970 to 2999, with the offset of the place.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The year is outside 1970 to 2999.</exception>
    public required DateTimeOffset At { get; init => field = RecordTime.Require(value, nameof(value)); }

    /// <summary>The role; the default value means "not stated".</summary>
    public Role Role { get; init; }

    /// <inheritdoc/>
    public bool Equals(Signature? other) =>
        other is not null && By == other.By && At.EqualsExact(other.At) && Role == other.Role;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Signature);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(By, At, Role);

    /// <summary>Person, role if stated, and time with offset.</summary>
    /// <returns>Text for people.</returns>
    public override string ToString() =>
        Role.IsEmpty ? $"{By.Value} at {RecordTime.ToText(At)}" : $"{By.Value} ({Role.Value}) at {RecordTime.ToText(At)}";
}
