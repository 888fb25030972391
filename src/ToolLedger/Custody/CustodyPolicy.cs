using System;
using System.Buffers;
using System.Collections.Generic;
using System.Collections.ObjectModel;
using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Custody;

/// <summary>Who may sign for what, and what a site allows: a part of the site policy.</summary>
/// <remarks>The default values are the P0 values of this library: examples, to be replaced by the organisation's own rules. Two policies are equal when all settings are. Immutable and thread-safe.</remarks>
public sealed partial record CustodyPolicy
{
    /// <summary>The most roles that one setting names.</summary>
    public const int MaxListCount = 32;

    /// <summary>The default values (P0).</summary>
    public static CustodyPolicy Default { get; } = new();

    /// <summary>Where everything is that is not signed out: the tool room, tool store or support section. It answers then.</summary>
    /// <value>The default is "tool room".</value>
    /// <exception cref="ArgumentException">The place is empty.</exception>
    public Place ToolRoom { get; init => field = value.IsEmpty ? throw new ArgumentException("What is not signed out is somewhere.", nameof(value)) : value; } = new("tool room");

    /// <summary>Whether the person who signed a kit or tool out may sign it back in.</summary>
    /// <value>The default is false (as US Air Force Instruction 21-101, 8.2.15, has it).</value>
    public bool SamePersonMayTakeBack { get; init; }

    /// <summary>Whether one person may be on both sides of an issue or loan where a second person is the witness: the procedure of a shift of one.</summary>
    /// <value>The default is false.</value>
    public bool SinglePersonWithWitness { get; init; }

    /// <summary>Whether a transfer needs a joint inventory, and the open lines of it acknowledged by both.</summary>
    /// <value>The default is true (as US Air Force Instruction 21-101, 8.2.5.1, has it).</value>
    public bool JointInventoryNeeded { get; init; } = true;

    /// <summary>The greatest age of that inventory at the transfer.</summary>
    /// <value>1 second to 366 days. The default is 1 hour (ours).</value>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside the range.</exception>
    public TimeSpan JointInventoryAgeMax { get; init => field = Age(value); } = TimeSpan.FromHours(1);

    /// <summary>Whether one tool may be lent at all out of a kit that is issued.</summary>
    /// <value>The default is true; false where single issue from a travelling kit is banned (US Air Force Instruction 21-101, 8.8.1.2).</value>
    public bool LoanFromIssuedKitAllowed { get; init; } = true;

    /// <summary>Whether a loan must say when it is due.</summary>
    /// <value>The default is true.</value>
    public bool LoanDueNeeded { get; init; } = true;

    /// <summary>Whether a kit is complete although one of its tools is lent or at a laboratory.</summary>
    /// <value>The default is false: the line is accounted for by the record, and the kit stays open until the tool is back.</value>
    public bool KitMayCloseWithOpenReceipt { get; init; }

    /// <summary>Whether a chit counts as a receipt.</summary>
    /// <value>The default is false (as US Air Force Instruction 21-101, 8.2.1.1, has it).</value>
    public bool ChitsAccepted { get; init; }

    /// <summary>Which tools of their own people may carry in.</summary>
    /// <value>The default is <see cref="PersonalToolRule.RegisteredOnly"/>.</value>
    public PersonalToolRule PersonalTools { get; init; } = PersonalToolRule.RegisteredOnly;

    /// <summary>Whether an issue must say when the kit is to be back.</summary>
    /// <value>The default is true: without it nothing is ever overdue.</value>
    public bool ExpectedReturnNeeded { get; init; } = true;

    /// <summary>The greatest age, at the issue, of the inventory it rests on (the gate before issue).</summary>
    /// <value>1 second to 366 days. The default is 12 hours (ours: one shift).</value>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside the range.</exception>
    public TimeSpan IssueInventoryAgeMax { get; init => field = Age(value); } = TimeSpan.FromHours(12);

    /// <summary>The roles that may issue, take back, lend and close receipts on the custodian's side.</summary>
    /// <value>At most 32 roles. The default is empty: any role, and none stated, counts.</value>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    /// <exception cref="ArgumentException">The list is too long or holds an empty role.</exception>
    public IReadOnlyList<Role> RolesThatMayIssue { get; init => field = Listed(value, nameof(RolesThatMayIssue)); } = [];

    /// <summary>The roles that may receive kits and tools.</summary>
    /// <value>At most 32 roles. The default is empty: any role, and none stated, counts.</value>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    /// <exception cref="ArgumentException">The list is too long or holds an empty role.</exception>
    public IReadOnlyList<Role> RolesThatMayReceive { get; init => field = Listed(value, nameof(RolesThatMayReceive)); } = [];

    /// <summary>The roles that may keep the log of a zone and close it.</summary>
    /// <value>At most 32 roles. The default is empty: any role, and none stated, counts.</value>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    /// <exception cref="ArgumentException">The list is too long or holds an empty role.</exception>
    public IReadOnlyList<Role> RolesThatMayKeepZoneLogs { get; init => field = Listed(value, nameof(RolesThatMayKeepZoneLogs)); } = [];

    /// <summary>Who holds which role, from when to when.</summary>
    /// <value>The default is empty: the role a person signs in is taken at its word.</value>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public RoleRoster Roster { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); } = RoleRoster.Empty;

    /// <summary>Compares all settings.</summary>
    /// <param name="other">The other policy.</param>
    /// <returns>True if every setting is equal.</returns>
    public bool Equals(CustodyPolicy? other) => other is not null && Written().AsSpan().SequenceEqual(other.Written());

    /// <summary>A hash of some settings.</summary>
    /// <returns>The hash.</returns>
    public override int GetHashCode() => HashCode.Combine(ToolRoom, SamePersonMayTakeBack, JointInventoryNeeded, LoanFromIssuedKitAllowed, PersonalTools);

    private static TimeSpan Age(TimeSpan value) => value >= ShortestAge && value <= LongestAge
        ? value
        : throw new ArgumentOutOfRangeException(nameof(value), value, "The greatest age of an inventory must be 1 second to 366 days.");

    private static ReadOnlyCollection<Role> Listed(IReadOnlyList<Role> list, string name)
    {
        ArgumentNullException.ThrowIfNull(list, name);
        Role[] copy = [.. list];
        return copy.Length <= MaxListCount && !Array.Exists(copy, static role => role.IsEmpty)
            ? Array.AsReadOnly(copy)
            : throw new ArgumentException("The list must hold at most 32 roles, none of them empty.", name);
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
