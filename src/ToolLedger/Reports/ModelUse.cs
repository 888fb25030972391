using System.Collections.Generic;
using System.Linq;
using ToolLedger.Presence;
using ToolLedger.Reconciliation;

namespace ToolLedger.Reports;

/// <summary>A model of a stated risk that weighed reads, or silence, of a kit, and the lines it did so for.</summary>
/// <param name="Number">0 for the policy's own, n for the n-th of <see cref="StatedRiskPolicy.Models"/>.</param>
/// <param name="Lines">The labels of the lines, in line order.</param>
internal sealed record ModelUse(int Number, IReadOnlyList<string> Lines)
{
    /// <summary>The models that weighed anything, in order of their numbers; none under a policy that states no risk.</summary>
    internal static IReadOnlyList<ModelUse> Of(ReconciliationResult result)
    {
        if (result.Policy.Presence is not StatedRiskPolicy policy)
        {
            return [];
        }

        var uses =
            from line in result.AllLines
            where line.Evidence.Risk is not null
            from number in policy.ModelsOf(line.Evidence.Best)
            group line.Label by number into use
            orderby use.Key
            select new ModelUse(use.Key, [.. use]);
        return [.. uses];
    }
}
