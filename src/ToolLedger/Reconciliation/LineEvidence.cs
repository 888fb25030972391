using System;
using System.Collections.Generic;
using ToolLedger.Custody;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>The figures a line's conclusion rests on.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class LineEvidence
{
    /// <summary>Number of live tags of the line's tool (for a set: of its container).</summary>
    public int LiveTagCount { get; init; }

    /// <summary>The probability that the reads leave, where the presence policy states one; null otherwise, and without reads that are judged.</summary>
    public PresenceRisk? Risk { get; init; }

    /// <summary>Distinct looks of the best-read live tag in usable sessions of the kit.</summary>
    public int LookCount { get; init; }

    /// <summary>Antennas that tag was seen on.</summary>
    public int AntennaCount { get; init; }

    /// <summary>Passes that tag was seen in.</summary>
    public int PassCount { get; init; }

    /// <summary>The usable sessions of the kit in which that tag was looked at, in order of station and time; of passes that are one, the first names them.</summary>
    public IReadOnlyList<SessionId> Sessions
    {
        get
        {
            var sessions = new List<SessionId>();
            foreach (PassEvidence pass in Best?.Passes ?? [])
            {
                if (pass.LookCount > 0 && !sessions.Contains(pass.Session))
                {
                    sessions.Add(pass.Session);
                }
            }

            return sessions;
        }
    }

    internal PresenceEvidence? Best { get; init; }

    /// <summary>Its strongest look, or null.</summary>
    public Rssi? Strongest { get; init; }

    /// <summary>Looks of that tag that are not among <see cref="LookCount"/>, since they were made only while another kit stood near; 0 (the default) if there are none.</summary>
    public int LooksNotCounted { get; init; }

    /// <summary>Its last look, counted or not, or null.</summary>
    public DateTimeOffset? LastSeen { get; init; }

    /// <summary>What people counted for the line, joined parts included, or of its pieces, or null.</summary>
    public Quantity? Counted { get; init; }

    /// <summary>Who sighted or counted it, or null.</summary>
    public PersonId? By { get; init; }

    /// <summary>When that person did so, or null.</summary>
    public DateTimeOffset? At { get; init; }

    /// <summary>The kit in which it was sighted, as the person said; null without a sighting or where not said.</summary>
    public KitId? SightedIn { get; init; }

    /// <summary>The witness of that sighting or count, or null.</summary>
    public PersonId? Witness { get; init; }

    /// <summary>Everyone who sighted, counted or witnessed what counts for the line, or an earlier entry that says the same and that nobody contradicted since.</summary>
    public IReadOnlyList<PersonId> Persons { get; init; } = [];

    /// <summary>The time of the latest sighting, count, joining, piece count, look at a seal or substitution that counts for the line, or null.</summary>
    public DateTimeOffset? LatestAt { get; init; }

    /// <summary>The time of the oldest evidence that the line, accounted for, cannot do without; null where it is open or where a basis has no time of its own.</summary>
    public DateTimeOffset? OldestAt { get; init; }

    /// <summary>When the kit was last opened, if that was not before <see cref="OldestAt"/>: what the line rests on may no longer hold. Null otherwise.</summary>
    public DateTimeOffset? OpenedSince { get; init; }

    /// <summary>How much of the line is known to be short by an annotation, in the unit of the line; 0 if nothing. So much less is expected than the manifest says.</summary>
    public decimal KnownShort { get; init; }

    /// <summary>The open receipt that places the tool elsewhere, signed by its receiver, or null.</summary>
    public ToolReceipt? Receipt { get; init; }

    /// <summary>The balance of a counted consumable, or null.</summary>
    public ConsumableBalance? Balance { get; init; }

    /// <summary>Sessions read of sessions presented in the past, or null where no history was handed in.</summary>
    public TagHistory? History { get; init; }
}
