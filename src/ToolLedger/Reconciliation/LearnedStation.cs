using ToolLedger.Presence;
using ToolLedger.Reads;

namespace ToolLedger.Reconciliation;

/// <summary>What was learned of the tags of one mounting class at one station.</summary>
/// <param name="Station">The station.</param>
/// <param name="Mounting">The class as bindings name it; null for tags of which none is stated.</param>
/// <param name="Learned">The model with its counts and bounds. The bound below the share of passes with a read counts the sessions that were left out since tags were silent too; the model and the other counts do not.</param>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed record LearnedStation(StationId Station, string? Mounting, LearnedDetection Learned)
{
    /// <summary>Sessions that people confirmed as a whole and that taught no model here, since tags were silent in them as on abnormal days: 0 or more.</summary>
    public int SilentSessionsLeftOut { get; init; }

    /// <summary>Passes in those sessions of tags of this class that were certainly there: 0 or more.</summary>
    public int SilentPassesThere { get; init; }

    /// <summary>Those with at least one read.</summary>
    public int SilentPassesRead { get; init; }

    /// <summary>The entry for <see cref="StatedRiskPolicy.Models"/>; null where the model is refused.</summary>
    public StationModel? Model => Learned.Model is { } model ? new StationModel(Station, Mounting, model) : null;
}
