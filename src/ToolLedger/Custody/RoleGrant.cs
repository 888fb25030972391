using System;
using ToolLedger.Records;

namespace ToolLedger.Custody;

/// <summary>A person holds a role, from when to when.</summary>
/// <remarks>Authorisations are tracked per individual (US Air Force Instruction 21-101 of 16 January 2020, 8.5.1.2.2). Equal when all four are. Immutable and thread-safe.</remarks>
public sealed record RoleGrant
{
    /// <summary>The person.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required PersonId Person { get; init => field = value.IsEmpty ? throw new ArgumentException("A grant needs a person.", nameof(value)) : value; }

    /// <summary>The role.</summary>
    /// <exception cref="ArgumentException">The role is empty.</exception>
    public required Role Role { get; init => field = value.IsEmpty ? throw new ArgumentException("A grant needs a role.", nameof(value)) : value; }

    /// <summary>From when on, that instant included.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The year is outside 1970 to 2999.</exception>
    public required DateTimeOffset From { get; init => field = RecordTime.Require(value, nameof(value)); }

    /// <summary>Until when, that instant excluded; null (the default) for no end.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The year is outside 1970 to 2999.</exception>
    public DateTimeOffset? Until { get; init => field = RecordTime.RequireOrNull(value, nameof(value)); }

    /// <summary>Whether the person holds the role at an instant.</summary>
    /// <param name="at">The instant.</param>
    /// <returns>True from <see cref="From"/> until before <see cref="Until"/>.</returns>
    public bool IsHeldAt(DateTimeOffset at) => From <= at && (Until is not { } until || at < until);
}
