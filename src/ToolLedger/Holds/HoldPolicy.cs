using System;
using System.Buffers;
using System.Collections.Generic;
using System.Collections.ObjectModel;
using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Holds;

/// <summary>Who may end a search or a hold, who must be told, what must be searched, and how long it may take: a part of the site policy.</summary>
/// <remarks>The default values are the P0 values of this library: examples, to be replaced by the organisation's own rules. Two policies are equal when all settings are. Immutable and thread-safe.</remarks>
public sealed partial record HoldPolicy
{
    /// <summary>The most entries of one setting.</summary>
    public const int MaxListCount = 32;

    /// <summary>The default values (P0).</summary>
    public static HoldPolicy Default { get; } = new();

    /// <summary>The roles that may release a hold when the item was found.</summary>
    /// <value>1 to 32 roles. The default is "release authority".</value>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    /// <exception cref="ArgumentException">The list is empty or too long, or holds an empty role.</exception>
    public IReadOnlyList<Role> RolesThatMayRelease { get; init => field = Entitled(value, nameof(RolesThatMayRelease)); } = [new("release authority")];

    /// <summary>The roles that may release a hold when the item was not found, was left in place, or was declared in error.</summary>
    /// <value>1 to 32 roles. The default is "release authority". One directive asks for no lower than the maintenance superintendent (US Air Force Instruction 21-101, 8.9.1).</value>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    /// <exception cref="ArgumentException">The list is empty or too long, or holds an empty role.</exception>
    public IReadOnlyList<Role> RolesThatMayReleaseNotFound { get; init => field = Entitled(value, nameof(RolesThatMayReleaseNotFound)); } = [new("release authority")];

    /// <summary>The roles that may release an impoundment.</summary>
    /// <value>1 to 32 roles. The default is "release authority".</value>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    /// <exception cref="ArgumentException">The list is empty or too long, or holds an empty role.</exception>
    public IReadOnlyList<Role> RolesThatMayReleaseImpound { get; init => field = Entitled(value, nameof(RolesThatMayReleaseImpound)); } = [new("release authority")];

    /// <summary>The roles that may decide that something is not affected, that a search ends, and that something is left in place.</summary>
    /// <value>1 to 32 roles. The default is "release authority".</value>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    /// <exception cref="ArgumentException">The list is empty or too long, or holds an empty role.</exception>
    public IReadOnlyList<Role> RolesThatMayDecide { get; init => field = Entitled(value, nameof(RolesThatMayDecide)); } = [new("release authority")];

    /// <summary>Whether whoever declared the item missing may release the hold, being entitled.</summary>
    /// <value>The default is false.</value>
    public bool DeclarerMayRelease { get; init; }

    /// <summary>Whether a tool that has a mark is found only by that mark.</summary>
    /// <value>The default is true.</value>
    public bool FoundMarkNeeded { get; init; } = true;

    /// <summary>Whether only a sighting by mark ends an exposure; a count or a read then does not.</summary>
    /// <value>The default is false.</value>
    public bool SightingEndsExposureOnly { get; init; }

    /// <summary>The functions that must be told of a hold before it is released, and told again when the item is found.</summary>
    /// <value>At most 32 texts. The default is empty.</value>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    /// <exception cref="ArgumentException">The list is too long or holds an empty text.</exception>
    public IReadOnlyList<string> NotificationsNeeded { get; init => field = Listed(value, static text => text.Length == 0, nameof(NotificationsNeeded)); } = [];

    /// <summary>The steps of a search that must be made before a hold is released without the item being found.</summary>
    /// <value>At most 32 texts. The default is empty.</value>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    /// <exception cref="ArgumentException">The list is too long or holds an empty text.</exception>
    public IReadOnlyList<string> SearchStepsNeeded { get; init => field = Listed(value, static text => text.Length == 0, nameof(SearchStepsNeeded)); } = [];

    /// <summary>How long after the declaration everybody who must be told is to have been told.</summary>
    /// <value>Null (the default) for no limit, or 1 second to 366 days.</value>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside the range.</exception>
    public TimeSpan? NotificationTimeMax { get; init => field = Limit(value); }

    /// <summary>How long after the declaration a hold may stand before it is shown as over its time.</summary>
    /// <value>Null (the default) for no limit, or 1 second to 366 days.</value>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside the range.</exception>
    public TimeSpan? HoldTimeMax { get; init => field = Limit(value); }

    /// <summary>How long after the last positive accounting a declaration is to be made; a later one is shown as late.</summary>
    /// <value>Null (the default) for no limit, or 1 second to 366 days.</value>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside the range.</exception>
    public TimeSpan? DeclarationTimeMax { get; init => field = Limit(value); }

    /// <summary>Compares all settings.</summary>
    /// <param name="other">The other policy.</param>
    /// <returns>True if every setting is equal.</returns>
    public bool Equals(HoldPolicy? other) => other is not null && Written().AsSpan().SequenceEqual(other.Written());

    /// <summary>A hash of some settings.</summary>
    /// <returns>The hash.</returns>
    public override int GetHashCode() => HashCode.Combine(DeclarerMayRelease, FoundMarkNeeded, SightingEndsExposureOnly, NotificationTimeMax, HoldTimeMax);

    private static TimeSpan? Limit(TimeSpan? value) => value is null || (value >= ShortestTime && value <= LongestTime)
        ? value
        : throw new ArgumentOutOfRangeException(nameof(value), value, "A limit must be 1 second to 366 days.");

    // An empty list would let anybody end a hold, so there is no such list.
    private static ReadOnlyCollection<Role> Entitled(IReadOnlyList<Role> list, string name) => list is { Count: 0 }
        ? throw new ArgumentException("At least one role must be named: nobody ends a hold without one.", name)
        : Listed(list, static role => role.IsEmpty, name);

    private static ReadOnlyCollection<T> Listed<T>(IReadOnlyList<T> list, Predicate<T> isEmpty, string name)
    {
        ArgumentNullException.ThrowIfNull(list, name);
        T[] copy = [.. list];
        return copy.Length <= MaxListCount && !Array.Exists(copy, isEmpty)
            ? Array.AsReadOnly(copy)
            : throw new ArgumentException("The list must hold at most 32 entries, none of them empty.", name);
    }

    /// <summary>The stored form holds every setting, so that a new one cannot be forgotten in the comparison.</summary>
    private byte[] Written()
    {
        var buffer = new ArrayBufferWriter<byte>(512);
        using (var writer = new Utf8JsonWriter(buffer))
        {
            WriteJson(writer);
        }

        return buffer.WrittenSpan.ToArray();
    }
}
