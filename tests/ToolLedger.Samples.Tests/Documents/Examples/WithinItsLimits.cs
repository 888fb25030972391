// <example>
using System.Globalization;
using System.IO;
using ToolLedger.Calibration;
// </example>

namespace ToolLedger.Samples.Tests.Documents.Examples;

/// <summary>An example of docs/calibration.md: values against limits, and the risk of a rule.</summary>
internal static class WithinItsLimits
{
    public static void Run(TextWriter Console, RepositoryFiles File)
    {
        _ = File;
        // <example>
        var limits = new ToleranceLimits(96, 104);
        foreach (decimal reading in (decimal[])[98.0m, 96.5m, 95.5m, 94.9m])
        {
            ConformityDecision decision = DecisionRule.NonBinary.Decide(MeasuredValue.FromExpanded(reading, expandedUncertainty: 1, coverageFactor: 2), limits);
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{reading}: {decision.Statement}, conforms with probability {decision.ConformanceProbability:F4}"));
        }

        // A ratio of 4:1 alone does not keep false acceptance below 2 %; the managed guard band does.
        double plain = GlobalRisk.WorstFalseAccept(ratio: 4);
        decimal width = new DecisionRule { GuardBand = GuardBandKind.ManagedRisk }.WidthOf(MeasuredValue.FromExpanded(0, 1, 2), limits);
        double guarded = GlobalRisk.WorstFalseAccept(ratio: 4, acceptanceOverTolerance: 1 - (double)(width / limits.Half!.Value));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"worst case: {plain:P2} without, {guarded:P2} with a guard band of {width:F3}"));
        // </example>
    }
}
