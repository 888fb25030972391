using System.Collections.Generic;
using System.Linq;
using ToolLedger.Presence;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>The terms of a stated risk as the sentences that the policy itself gives for open lines, each with the odds it leaves.</summary>
internal static class RiskTable
{
    private static readonly ReasonKind[] Terms =
    [
        PresenceReasons.TermPrior, PresenceReasons.TermRead, PresenceReasons.TermReadPass, PresenceReasons.TermDegradedPass, PresenceReasons.TermSilentPass,
        PresenceReasons.TermBoundedPass, PresenceReasons.TermSilence, PresenceReasons.TermSum,
    ];

    private static readonly ReasonKind[] Advice =
    [
        PresenceReasons.AdviceNewPasses, PresenceReasons.AdviceMoreLooks, PresenceReasons.AdviceNoLooks, PresenceReasons.AdviceMayBeObscured, PresenceReasons.AdviceSighting,
    ];

    /// <summary>Whether a reason is one that the table, or the sentence under it, shows.</summary>
    internal static bool Shows(Reason reason) => Terms.Contains(reason.Kind) || Advice.Contains(reason.Kind);

    /// <summary>What settles the line, as the policy says it.</summary>
    internal static IEnumerable<Reason> AdviceOf(LineConclusion line) => line.Reasons.Where(static reason => Advice.Contains(reason.Kind));

    /// <summary>The stated risk of the kit; null where none is stated.</summary>
    internal static Reason? StatedOf(ReconciliationResult result) =>
        result.Findings.FirstOrDefault(static finding => finding.Reason.Kind == RiskReasons.RiskStated)?.Reason;

    /// <summary>The terms in their order, each with the log-odds up to and with it.</summary>
    internal static IEnumerable<(PresenceTerm Term, double LogOdds)> TermsOf(PresenceRisk risk)
    {
        double sum = 0;
        foreach (PresenceTerm term in risk.Terms)
        {
            sum += term.LogOdds;
            yield return (term, sum);
        }
    }
}
