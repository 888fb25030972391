using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using ToolLedger.Ledger;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>Everything a shift report shows. Nothing else, no clock and no culture, changes a byte of it.</summary>
/// <remarks>Immutable and thread-safe if the lists handed in are not changed.</remarks>
public sealed class ShiftReportInput
{
    /// <summary>The results, one a kit, in the order the kits are printed; at least one.</summary>
    public required IReadOnlyList<ReconciliationResult> Results { get; init; }

    /// <summary>The sessions that were handed in; those that present none of the kits of <see cref="Results"/> are named beside the others, so that a wrong kit on a sheet shows.
    /// None by default, and then only the sessions of the results are told.</summary>
    public IReadOnlyList<ReadSession> Sessions { get; init; } = [];

    /// <summary>The answers of the gate "before operation", at most one for each kit of <see cref="Results"/>; none by default, and then the report does not speak of the gate.</summary>
    public IReadOnlyList<GateAnswer> Gates { get; init; } = [];

    /// <summary>What follows from the ledger: with it the fifth question tells who answers, which equipment is exposed since the last positive accounting, and which holds stand. Null by default, and then
    /// it tells what is known without custody.</summary>
    public LedgerState? Ledger { get; init; }

    /// <summary>When the report is made.</summary>
    public required DateTimeOffset MadeAt { get; init; }

    /// <summary>The site's calendar: times are shown by it, with their offset. The default is the calendar of the policy the first result was made under.</summary>
    [AllowNull]
    public SiteCalendar Calendar { get => field ?? (Results.Count > 0 ? Results[0].Policy.Calendar : SiteCalendar.Utc); init; }

    /// <summary>What the site calls its policy; null (the default) if it has no name.</summary>
    public string? PolicyName { get; init; }

    /// <summary>Whether the host was given no policy of a site, so that the documented defaults apply; the head of the report then says so. False by default.</summary>
    public bool IsPolicyDefault { get; init; }

    /// <summary>The digest of the site policy as stored; empty (the default) if there is none.</summary>
    public Digest PolicyDigest { get; init; }

    /// <summary>The site's own rules, as they were handed to the <see cref="Reconciler"/> of every result: the report names them where it tells the digest they are part of. None by default; then it says where a result has
    /// rules that it was not told.</summary>
    public IReadOnlyList<IReconciliationRule> Rules { get; init; } = [];

    /// <summary>The files or messages the host read; none by default.</summary>
    public IReadOnlyList<SourceDigest> Sources { get; init; } = [];

    /// <summary>Rows the host could not use, by source; none by default.</summary>
    public IReadOnlyList<RefusedRows> Refused { get; init; } = [];

    /// <summary>The sentences; English by default. Codes, digests and the JSON's words are the same in every language.</summary>
    public Wording Wording { get; init; } = Wording.English;
}
