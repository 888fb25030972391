using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Presence;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>What a policy with a stated risk finds of the whole kit. None of it raises or lowers a line.</summary>
internal static class RiskFindingSearch
{
    public static IEnumerable<Finding> Of(ReconciliationScope scope, ToolReadsCollector collector, KitConclusion kit, IReadOnlyList<JudgedLine> lines)
    {
        if (scope.Policy.Presence is not StatedRiskPolicy policy)
        {
            yield break;
        }

        foreach ((ToolId tool, decimal share) in scope.SharesOfNoManifest)
        {
            yield return new Finding(FindingLevel.Kit, new Reason(RiskReasons.ShareOfNoManifest, ("tool", tool.Value), ("percent", RiskWords.Percent((double)share))));
        }

        if (kit.Risk is not { } risk)
        {
            yield break;
        }

        if (risk.LineCount > 0)
        {
            yield return new Finding(FindingLevel.Kit, new Reason(
                RiskReasons.RiskStated, ("count", LineConclusion.Text(risk.LineCount)), ("chance", RiskWords.Chance(risk.Joint)), ("percent", RiskWords.Percent(risk.Joint)),
                ("limit", RiskWords.Percent(risk.Limit)), ("models", LineConclusion.Text(ModelsOf(policy, lines)))));
        }

        if (!risk.IsWithinLimit && lines.FirstOrDefault(line => string.Equals(line.Conclusion.Label, risk.HeaviestLine, StringComparison.Ordinal)) is { } heaviest)
        {
            yield return heaviest.FindingOf(FindingLevel.Kit, KitJudge.OverLimit(risk));
        }

        JudgedLine[] judged = [.. lines.Where(static line => line.Reads is { Best: not null, Neighbour: null })];
        if (judged.Length > 0 && judged.All(static line => line.Reads.Best!.LookCount == 0))
        {
            yield return Silence(policy, collector, judged);
        }
    }

    /// <summary>How many models weighed the lines that the stated risk is of.</summary>
    private static int ModelsOf(StatedRiskPolicy policy, IReadOnlyList<JudgedLine> lines) => policy.Models.Count == 0 ? 1 : lines.Select(static line => line.Conclusion)
        .Where(static line => line is { Basis: AccountingBasis.Read, Evidence.Risk: not null }).SelectMany(line => policy.ModelsOf(line.Evidence.Best)).Distinct().Count();

    private static Finding Silence(StatedRiskPolicy policy, ToolReadsCollector collector, JudgedLine[] judged)
    {
        double there = 0, away = 0;
        foreach (JudgedLine line in judged)
        {
            // Exact, at the model's own parameters: a finding needs no bound.
            (double ifThere, double ifAbsent) = policy.LogSilence(line.Reads.Best!);
            double absent = (double)(line.Reads.Best!.AbsentShare ?? policy.AbsentShare);
            there += DetectionModel.LogSilent(absent, ifThere - ifAbsent) + ifAbsent;
            away += ifAbsent;
        }

        // A control tag, or anything else that was heard in the same window, shows that the reader works.
        bool isShownUp = collector.UsedSessions.All(static session => session.AcceptedCount > 0);
        SilenceCauses causes = SilenceCauses.Of((double)policy.KitAwayShare, isShownUp ? 0 : (double)policy.ReaderDownShare, there, away, isSilent: true);
        return new Finding(FindingLevel.Kit, new Reason(
            RiskReasons.SilenceCauses, ("count", LineConclusion.Text(judged.Length)), ("away", RiskWords.Percent(causes.KitAway + causes.Both)),
            ("down", RiskWords.Percent(causes.ReaderDown + causes.Both)), ("missed", RiskWords.Percent(causes.AllMissed))))
        {
            LineNumbers = [.. judged.Select(static line => line.Conclusion.OuterNumber).Distinct()],
            LineLabels = [.. judged.Select(static line => line.Conclusion.Label)],
        };
    }
}
