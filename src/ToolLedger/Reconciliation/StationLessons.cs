using System.Collections.Generic;
using System.Linq;
using ToolLedger.Presence;

namespace ToolLedger.Reconciliation;

/// <summary>What reconciled sessions taught of how tags answer.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class StationLessons
{
    internal StationLessons(IReadOnlyList<LearnedStation> stations, int learned, int leftOut, int silent)
    {
        Stations = stations;
        SessionsLearned = learned;
        SessionsLeftOut = leftOut;
        SilentSessionsLeftOut = silent;
    }

    /// <summary>One entry for each station and mounting class of which anything was learned, in ordinal order.</summary>
    public IReadOnlyList<LearnedStation> Stations { get; }

    /// <summary>Sessions of kits that were learned from.</summary>
    public int SessionsLearned { get; }

    /// <summary>Those that were not: abnormal, or not confirmed by people as a whole.</summary>
    public int SessionsLeftOut { get; }

    /// <summary>Those that people confirmed as a whole and that were left out since tags were silent in them. Without them tags seem to answer better than they do: the bound below the share of passes with a read counts them, the model does not.</summary>
    public int SilentSessionsLeftOut { get; }

    /// <summary>The models for <see cref="StatedRiskPolicy.Models"/>; those refused are left out, so that such tags are weighed by the policy's own model.</summary>
    public IReadOnlyList<StationModel> Models => [.. Stations.Select(static station => station.Model).OfType<StationModel>()];
}
