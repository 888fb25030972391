using System.Linq;
using ToolLedger.Reconciliation;

namespace ToolLedger.Testing.Laws;

/// <inheritdoc cref="ReconciliationLaw.Reasons"/>
internal sealed class ReasonsLaw : Law
{
    public override ReconciliationLaw Kind => ReconciliationLaw.Reasons;

    public override LawAnswer Try(LawTrial trial)
    {
        ReconciliationResult result = trial.Result;
        foreach (LineConclusion line in result.AllLines)
        {
            bool hasNext = line.Next is { Reason: { } next } && next.ToString().Length > 0;
            if (line.Reasons.Count == 0 || line.IsAccounted == hasNext || line.IsAccounted != (line.Basis != AccountingBasis.None))
            {
                return LawAnswer.Broken("a reason for every line, a next step for every open one, a basis for every other", $"{line}: {string.Join("; ", line.Reasons)}; next {line.Next}; basis {line.Basis}");
            }
        }

        if (result.Kit.State != KitState.Complete && result.Kit.Reasons.Count == 0)
        {
            return LawAnswer.Broken("a reason why the kit is not complete", result.Kit.ToString());
        }

        if (result.PolicyDigest.IsEmpty || string.IsNullOrEmpty(result.LibraryVersion))
        {
            return LawAnswer.Broken("the digest of the policy and the version of the library", "none");
        }

        int open = result.AllLines.Count(static line => !line.IsAccounted);
        return result.ChaseList.Count == open ? LawAnswer.Holds : LawAnswer.Broken($"{open} open lines in the search order", $"{result.ChaseList.Count}");
    }
}
