namespace ToolLedger.Presence;

/// <summary>What passes of so many looks can reach, by sums over all that may be read in them: exact, or, of very many looks, rounded to the side that promises less.</summary>
/// <param name="Passes">The passes.</param>
/// <param name="Looks">The looks of each.</param>
/// <param name="ChanceSettled">The chance that a tool that is there is accounted for; 0 to 1.</param>
/// <param name="ChanceKitSettled">The same of every line of the kit, tools answering independently.</param>
/// <param name="ChanceAccountedWhenAbsent">The chance that a tool that is not there is accounted for, at the worst corner of the robustness box.</param>
/// <param name="LeastRisk">The risk of a tool that is read in every look; 1 where there is no look.</param>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed record PresencePlan(int Passes, int Looks, double ChanceSettled, double ChanceKitSettled, double ChanceAccountedWhenAbsent, double LeastRisk)
{
    /// <summary>False where a search ended before every smaller plan was tried, so that a smaller one may do; the default is true.</summary>
    public bool IsSearchComplete { get; init; } = true;
}
