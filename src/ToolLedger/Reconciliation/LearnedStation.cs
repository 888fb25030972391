using ToolLedger.Presence;
using ToolLedger.Reads;

namespace ToolLedger.Reconciliation;

/// <summary>What was learned of the tags of one mounting class at one station.</summary>
/// <param name="Station">The station.</param>
/// <param name="Mounting">The class as bindings name it; null for tags of which none is stated.</param>
/// <param name="Learned">The model with its counts and bounds.</param>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed record LearnedStation(StationId Station, string? Mounting, LearnedDetection Learned)
{
    /// <summary>The entry for <see cref="StatedRiskPolicy.Models"/>; null where the model is refused.</summary>
    public StationModel? Model => Learned.Model is { } model ? new StationModel(Station, Mounting, model) : null;
}
