using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.Linq;
using ToolLedger.Kits;

namespace ToolLedger.Reconciliation;

/// <summary>Asks a rule about a line. Whatever goes wrong inside it is told with the rule, the kit and the line.</summary>
internal static class RuleAsk
{
    [SuppressMessage("Design", "CA1031", Justification = "The code of a host may throw anything; it is passed on with the place it happened at.")]
    internal static Verdict Ask(IReconciliationRule rule, in LineFacts facts, KitTree tree)
    {
        Verdict? verdict;
        try
        {
            verdict = rule.Judge(in facts);
        }
        catch (Exception thrown) when (thrown is not OperationCanceledException)
        {
            throw Failed(rule, facts.Line, tree, $"threw {thrown.GetType().FullName} ({thrown.Message})", thrown);
        }

        return verdict is null ? throw Failed(rule, facts.Line, tree, "gave no verdict", null)
            : verdict.Findings.Count == 0 ? verdict
            : verdict.WithFindings(FindingsOf(rule, verdict, facts, tree));
    }

    /// <summary>The findings of a verdict by the numbers of the kit under check. A rule knows the lines of the manifest it was handed, and those inside the line.</summary>
    private static List<Finding> FindingsOf(IReconciliationRule rule, Verdict verdict, in LineFacts facts, KitTree tree)
    {
        var findings = new List<Finding>(verdict.Findings.Count);
        foreach (Finding finding in verdict.Findings)
        {
            if (finding is null)
            {
                throw Failed(rule, facts.Line, tree, "gave a finding that is null", null);
            }

            foreach (int number in finding.LineNumbers)
            {
                if (facts.Manifest.FindLine(number) is null)
                {
                    throw Failed(rule, facts.Line, tree, $"gave a finding on line {LineConclusion.Text(number)}, which kit \"{facts.Manifest.Id}\" does not have", null);
                }
            }

            var labels = new List<string>(finding.LineLabels.Count);
            foreach (string label in finding.LineLabels)
            {
                labels.Add(LabelOf(finding, label, facts, tree) ?? throw Failed(rule, facts.Line, tree, $"gave a finding on line {label}, which is none that it was asked about", null));
            }

            findings.Add(tree.Within.Count == 0 ? finding : new Finding(finding.Level, finding.Reason)
            {
                LineNumbers = finding.LineNumbers.Count > 0 ? [tree.Within[0]] : [],
                LineLabels = labels,
                Tags = finding.Tags,
                Session = finding.Session,
            });
        }

        return findings;
    }

    private static string? LabelOf(Finding finding, string label, in LineFacts facts, KitTree tree)
    {
        foreach (int number in finding.LineNumbers)
        {
            if (string.Equals(label, LineConclusion.Text(number), StringComparison.Ordinal))
            {
                return LineConclusion.LabelOf(tree.Within, number);
            }
        }

        return facts.Inner.SelectMany(static line => line.WithInner()).Any(line => string.Equals(line.Label, label, StringComparison.Ordinal)) ? label : null;
    }

    private static RuleException Failed(IReconciliationRule rule, ManifestLine line, KitTree tree, string what, Exception? thrown) =>
        new(rule, tree.Subject.Manifest, LineConclusion.LabelOf(tree.Within, line.Number), what, thrown);
}
