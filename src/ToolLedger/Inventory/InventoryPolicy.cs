using System;
using System.Buffers;
using System.Collections.Generic;
using System.Collections.ObjectModel;
using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Inventory;

/// <summary>How far what people say may settle lines; a part of the site policy.</summary>
/// <remarks>The default values are the P0 values of this library: examples, to be replaced by the organisation's own rules. Two policies are equal when all settings are. Immutable and thread-safe.</remarks>
public sealed partial record InventoryPolicy
{
    /// <summary>The most roles or units that one setting names.</summary>
    public const int MaxListCount = 32;

    private const int MaxPersonsNeeded = 4;
    private static readonly TimeSpan ShortestAge = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan LongestAge = TimeSpan.FromDays(366);

    /// <summary>The default values (P0).</summary>
    public static InventoryPolicy Default { get; } = new();

    /// <summary>Whether people may complete a kit without any usable read session.</summary>
    /// <value>The default is true.</value>
    public bool ManualInventoryAllowed { get; init; } = true;

    /// <summary>How many different persons must have looked, counted, witnessed or signed before a kit is complete while any of its lines rests on people alone. Ids that differ only in case, spaces or punctuation count as one.</summary>
    /// <value>Persons; 1 to 4. The default is 2.</value>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside the range.</exception>
    public int ManualInventoryPersonsNeeded
    {
        get;
        init => field = value is >= 1 and <= MaxPersonsNeeded ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "The persons needed for a manual inventory must be 1 to 4.");
    } = 2;

    /// <summary>The greatest age of a sighting or count at the instant of reconciliation; an older one is not used.</summary>
    /// <value>1 second to 366 days. The default is 1 hour (ours: what was seen at the start of a shift says nothing of its end).</value>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside the range.</exception>
    public TimeSpan EvidenceAgeMax
    {
        get;
        init => field = value >= ShortestAge && value <= LongestAge ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "The greatest age of what people say must be 1 second to 366 days.");
    } = TimeSpan.FromHours(1);

    /// <summary>The greatest age of a job record of a consumable at the instant of reconciliation; an older one belongs to an earlier issue and explains nothing.</summary>
    /// <value>1 second to 366 days. The default is 12 hours (ours: one shift).</value>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside the range.</exception>
    public TimeSpan JobRecordAgeMax
    {
        get;
        init => field = value >= ShortestAge && value <= LongestAge ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "The greatest age of job records must be 1 second to 366 days.");
    } = TimeSpan.FromHours(12);

    /// <summary>How many different persons must stand behind a reconstruction before it settles the number of pieces of a broken tool.</summary>
    /// <value>Persons; 1 or 2. The default is 2 (ours: the number decides when a search may end).</value>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside the range.</exception>
    public int ReconstructionPersonsNeeded
    {
        get;
        init => field = value is 1 or 2 ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "The persons needed for a reconstruction must be 1 or 2.");
    } = 2;

    /// <summary>Whether a sighting settles a line only with a second person as its witness.</summary>
    /// <value>The default is false.</value>
    public bool SightingWitnessNeeded { get; init; }

    /// <summary>Whether a sighting that does not say in which kit the tool was counts as one in its own kit.</summary>
    /// <value>The default is false: a tool that was seen in a wheel well was seen, and is not back. Such a sighting then settles no line, and what was read or counted before it has lost its force.</value>
    public bool SightingsWithoutKitAccepted { get; init; }

    /// <summary>Whether a count of items or pieces settles a line only with a second person as its witness. Without one it can still contradict.</summary>
    /// <value>The default is false.</value>
    public bool CountWitnessNeeded { get; init; }

    /// <summary>Whether a person who sighted, counted or witnessed may sign for the same inventory.</summary>
    /// <value>The default is true; false is the ban on signing one's own work (as US Air Force Instruction 21-101, 8.2.15.1, bans signing in what one has signed out).</value>
    public bool CounterMaySign { get; init; } = true;

    /// <summary>The roles whose signature counts, on the sheet, under annotations and under reconstructions.</summary>
    /// <value>At most 32 roles, compared ordinally. The default is empty: any role, and none stated, counts.</value>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    /// <exception cref="ArgumentException">The list is too long or holds an empty role.</exception>
    public IReadOnlyList<Role> RolesThatMaySign { get; init => field = Listed(value, static role => role.IsEmpty, nameof(RolesThatMaySign)); } = [];

    /// <summary>Whether a sighting by a mark that several tools share counts if it says what else told the tool apart.</summary>
    /// <value>The default is false: a kit mark is not a tool mark.</value>
    public bool FurtherIdentificationAccepted { get; init; }

    /// <summary>The units in which consumable lines, such as the used length of a spool, need not be counted by local rule. Such a line is listed apart unless somebody counted it.</summary>
    /// <value>At most 32 units, compared ordinally. The default is empty: every line must be counted.</value>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    /// <exception cref="ArgumentException">The list is too long or holds an empty unit.</exception>
    public IReadOnlyList<Unit> UnitsNotCounted { get; init => field = Listed(value, static unit => unit.IsEmpty, nameof(UnitsNotCounted)); } = [];

    /// <summary>Whether a sub-kit that is closed with an intact numbered seal is accounted for on that record, without opening it.</summary>
    /// <value>The default is false: what is inside is then not assessed.</value>
    public bool SealsAccepted { get; init; }

    /// <summary>The greatest age, at the instant of reconciliation, of the inventory after which a sub-kit was sealed.</summary>
    /// <value>1 second to 366 days. The default is 30 days (ours).</value>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside the range.</exception>
    public TimeSpan SealAgeMax
    {
        get;
        init => field = value >= ShortestAge && value <= LongestAge ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "The greatest age of a seal must be 1 second to 366 days.");
    } = TimeSpan.FromDays(30);

    /// <summary>Compares all settings.</summary>
    /// <param name="other">The other policy.</param>
    /// <returns>True if every setting is equal.</returns>
    public bool Equals(InventoryPolicy? other) => other is not null && Written().AsSpan().SequenceEqual(other.Written());

    /// <summary>A hash of some settings.</summary>
    /// <returns>The hash.</returns>
    public override int GetHashCode() => HashCode.Combine(ManualInventoryAllowed, ManualInventoryPersonsNeeded, EvidenceAgeMax, JobRecordAgeMax, CounterMaySign);

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

    private static ReadOnlyCollection<T> Listed<T>(IReadOnlyList<T> list, Predicate<T> isEmpty, string name)
    {
        ArgumentNullException.ThrowIfNull(list, name);
        T[] copy = [.. list];
        return copy.Length <= MaxListCount && !Array.Exists(copy, isEmpty)
            ? Array.AsReadOnly(copy)
            : throw new ArgumentException("The list must hold at most 32 entries, none of them empty.", name);
    }
}
