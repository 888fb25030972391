using System;
using System.Collections.Generic;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Presence;

/// <summary>All that the usable sessions of a kit say about one live tag: looks by pass and by antenna, never raw counts of reads.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class PresenceEvidence
{
    /// <summary>What <see cref="Mounting"/> is for a tag that was mounted in several ways within the passes: no class has an empty name.</summary>
    public const string ManyMountings = "";

    /// <summary>The tag.</summary>
    public required TagId Tag { get; init; }

    /// <summary>Every pass of every usable session of the kit in which the tag was live, silent ones included.</summary>
    public required IReadOnlyList<PassEvidence> Passes { get; init; }

    /// <summary>Antennas on which it was seen.</summary>
    public required IReadOnlyList<AntennaEvidence> Antennas { get; init; }

    /// <summary>Strongest look, or null where no strength was reported.</summary>
    public Rssi? Strongest { get; init; }

    /// <summary>True where a chip number (TID) was reported at least once.</summary>
    public bool HasTid { get; init; }

    /// <summary>What past sessions say, or null where not handed in.</summary>
    public TagHistory? History { get; init; }

    /// <summary>The model and mounting of the tag as its binding names it, for a policy that knows how such tags answer; null (the default) where not stated,
    /// empty (<see cref="ManyMountings"/>) where it was mounted in several ways within the passes: no class was learned from such tags, so the policy's own model counts.</summary>
    public string? Mounting { get; init; }

    /// <summary>The lines of the kit, for a policy whose risk is that of the whole kit; 0 (the default) where nobody says it, which such a policy takes for many.</summary>
    public int KitLineCount { get; init; }

    /// <summary>The tags that could have shown the tool, for the same: each is a further chance for it to look as if it were there, so the line counts once for each. One by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is none.</exception>
    public int ToolTagCount { get; init => field = value >= 1 ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "At least one tag must be meant."); } = 1;

    /// <summary>The probability before the session that the tool is not there, from custody for instance (on loan, just packed); null (the default) for that of the policy.</summary>
    public decimal? AbsentShare { get; init; }

    /// <summary>What <see cref="AbsentShare"/> rests on, told with the terms; null (the default) where nobody says.</summary>
    public Reason? AbsentShareWhy { get; init; }

    /// <summary>Distinct looks over all passes.</summary>
    public int LookCount
    {
        get
        {
            long sum = 0;
            for (int i = 0; i < Passes.Count; i++)
            {
                sum += Passes[i].LookCount;
            }

            return (int)long.Min(sum, int.MaxValue);
        }
    }

    /// <summary>The tag, and over how many antennas and passes its looks are spread.</summary>
    /// <returns>One line of English text.</returns>
    public override string ToString() => FormattableString.Invariant($"{Tag}: looks {LookCount}, antennas {Antennas.Count}, passes {Passes.Count}");
}
