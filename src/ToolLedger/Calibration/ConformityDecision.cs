using System.Runtime.InteropServices;

namespace ToolLedger.Calibration;

/// <summary>The statement about one measured value, with the risk of it.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
/// <param name="Statement">The statement.</param>
/// <param name="ConformanceProbability">The probability that the true value lies within the tolerance limits, 0 to 1; 1 or 0 where no uncertainty is stated.</param>
/// <param name="GuardBandWidth">The width of the guard band.</param>
/// <param name="AcceptanceLower">The lower acceptance limit; null if open.</param>
/// <param name="AcceptanceUpper">The upper acceptance limit; null if open.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct ConformityDecision(ConformityStatement Statement, double ConformanceProbability, decimal GuardBandWidth, decimal? AcceptanceLower, decimal? AcceptanceUpper)
{
    /// <summary>The probability that the statement is wrong about this value: that it does not conform where it passed, or conforms where it failed.</summary>
    public double SpecificRisk => Statement <= ConformityStatement.ConditionalPass ? 1 - ConformanceProbability : ConformanceProbability;
}
