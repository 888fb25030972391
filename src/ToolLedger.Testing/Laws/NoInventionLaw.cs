using System.Collections.Generic;
using System.Linq;
using System.Text.RegularExpressions;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Testing.Laws;

/// <inheritdoc cref="ReconciliationLaw.NoInvention"/>
internal sealed partial class NoInventionLaw : Law
{
    public override ReconciliationLaw Kind => ReconciliationLaw.NoInvention;

    public override LawAnswer Try(LawTrial trial)
    {
        // Nobody in a generated shift says any of these words, so whoever says them has invented them.
        foreach (Reason reason in Reasons(trial.Result))
        {
            string sentence = reason.ToString();
            if (Said().IsMatch(sentence) || Said().IsMatch(reason.Code))
            {
                return LawAnswer.Broken("nothing is called missing, lost, found or released unless a person says so", $"{reason.Code}: {sentence}");
            }
        }

        return LawAnswer.Holds;
    }

    private static IEnumerable<Reason> Reasons(ReconciliationResult result)
        => result.AllLines.SelectMany(static line => line.Next is { } next ? line.Reasons.Append(next.Reason) : line.Reasons)
            .Concat(result.Kit.Reasons)
            .Concat(result.Findings.Select(static finding => finding.Reason))
            .Concat(result.Reads.Select(static read => read.Reason));

    // "lost-tool procedure" is the name of what people follow, not a conclusion.
    [GeneratedRegex(@"\b(?:missing|lost(?!-tool)|found|released)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Said();
}
