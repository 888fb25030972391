using System;
using System.Collections.Generic;
using System.Collections.ObjectModel;
using System.Globalization;
using ToolLedger.Calibration;
using ToolLedger.Custody;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>Everything a reconciliation looks at. Nothing else, no clock and no culture, can change its result.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class ReconciliationInput
{
    /// <summary>The manifests of all kits, so that a read of another kit's tool can be explained.</summary>
    public required KitRegister Kits { get; init; }

    /// <summary>The kit under check.</summary>
    public required KitId Subject { get; init; }

    /// <summary>The manifest revision the kit was issued under, or null for the one that <see cref="Custody"/> says, or else the one effective at <see cref="AsOf"/>.</summary>
    public int? Revision { get; init; }

    /// <summary>Read sessions, of this kit and of others. Those that present the subject and ended no later than <see cref="AsOf"/> are its evidence; the others explain and hint.</summary>
    public IReadOnlyList<ReadSession> Sessions { get; init; } = [];

    /// <summary>Which tag was on which tool, when.</summary>
    public TagRegister Tags { get; init; } = TagRegister.Empty;

    /// <summary>What people sighted and counted.</summary>
    public InventorySheet Inventory { get; init; } = InventorySheet.Empty;

    /// <summary>Who answers for what: issues, receipts, visits. A kit that is out is checked against the revision it was issued under, and a tool on an open receipt is accounted for by that record.</summary>
    public CustodyRegister Custody { get; init; } = CustodyRegister.Empty;

    /// <summary>Calibration records.</summary>
    public CalibrationRegister Calibration { get; init; } = CalibrationRegister.Empty;

    /// <summary>What past sessions say of each tag; orders the search, accounts for nothing.</summary>
    public IReadOnlyDictionary<TagId, TagHistory> History { get; init; } = ReadOnlyDictionary<TagId, TagHistory>.Empty;

    /// <summary>For tools of which somebody knows more than custody: the probability before the session that the tool is not there, 0.000001 to 0.9 with at most 9 decimals. It is used by a policy
    /// with a stated risk and said in the result. A share lower than what custody says of the tool does not win over it: the larger counts. Where custody says nothing it stands as given, be it lower or higher than the
    /// policy's own. One for a tool that no manifest lists is told as a finding.</summary>
    public IReadOnlyDictionary<ToolId, decimal> AbsentShares { get; init; } = ReadOnlyDictionary<ToolId, decimal>.Empty;

    /// <summary>Tags heard while no session was open: hints, never evidence.</summary>
    public IReadOnlyList<ProximityNote> ProximityNotes { get; init; } = [];

    /// <summary>The instant the answer is for. Nothing that ended or took effect later is looked at.</summary>
    public required DateTimeOffset AsOf { get; init; }

    /// <summary>The kit, the instant and how many sessions and tags there are to look at.</summary>
    /// <returns>One line of English text.</returns>
    public override string ToString() => FormattableString.Invariant(
        $"kit {Subject.Value}{(Revision is { } revision ? " revision " + revision.ToString(CultureInfo.InvariantCulture) : "")} as of {RecordTime.ToText(AsOf)}, {Sessions.Count} sessions, {Tags}");
}
