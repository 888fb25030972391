using System.Collections.Generic;
using System.Linq;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>The site's own rules in the digest of a policy. A result holds only that digest, so rules that are named are checked by it.</summary>
internal static class PolicyRules
{
    private const int Shown = 20;

    /// <summary>Whether every result was made with these rules and no others of a site.</summary>
    internal static bool AreThoseOf(IReadOnlyList<ReconciliationResult> results, IReadOnlyList<IReconciliationRule> rules) =>
        results.DistinctBy(static result => result.PolicyDigest).All(result => new Reconciler(result.Policy, rules).PolicyDigest == result.PolicyDigest);

    /// <summary>The rules by their names, so that the order in which a host lists them does not show.</summary>
    internal static IEnumerable<IReconciliationRule> InOrder(IReadOnlyList<IReconciliationRule> rules) => rules.OrderBy(static rule => rule.Name, System.StringComparer.Ordinal);

    /// <summary>Names the rules, or says that there are some without a name here; empty where there are none.</summary>
    internal static string Say(ShiftReportInput input, Digest digest, ReportVoice voice)
    {
        if (input.Rules.Count > 0)
        {
            string[] names = [.. InOrder(input.Rules).Select(static rule => $"{rule.Name} {rule.Version}")];
            return voice.Say(ReportSentences.PolicyRules, ("rules", voice.List(names, names.Length, Shown)));
        }

        ReconciliationResult[] one = [input.Results.First(result => result.PolicyDigest == digest)];
        return AreThoseOf(one, []) ? "" : voice.Say(ReportSentences.PolicyRulesNotNamed);
    }
}
