using System;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Reconciliation;
using ToolLedger.Testing.Cases;
using ToolLedger.Testing.Generators;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Laws;

/// <inheritdoc cref="ReconciliationLaw.TwoAnswers"/>
internal sealed class TwoAnswersLaw : Law
{
    public override ReconciliationLaw Kind => ReconciliationLaw.TwoAnswers;

    public override LawAnswer Try(LawTrial trial)
    {
        ReconciliationCase facts = trial.Case;
        Tool[] tools = [.. trial.Case.Manifests.SelectMany(static manifest => manifest.Lines).SelectMany(AnyShiftParts.ToolsOf).DistinctBy(static tool => tool.Id)];
        int daysLeft = trial.Chance.Below(200) - 100;
        ReconciliationResult other = trial.Ask(facts with { Calibrations = [.. tools.Select(tool => AnyReconciliationCase.Record(tool.Id, facts.AsOf, daysLeft))] });
        LawAnswer answer = LawAnswer.Same("other calibration records, the same accounting", ResultText.Accounting(trial.Result), ResultText.Accounting(other));
        if (answer.IsBroken)
        {
            return answer;
        }

        // An identity in doubt makes both answers unknown; such lines are left out.
        ReconciliationResult silent = trial.Ask(facts with { Sessions = [], Entries = new InventoryEntries() });
        // Records decide what is expected and which alternate is in place, so that only lines of one tool are compared.
        foreach ((LineConclusion one, LineConclusion two) in trial.Result.AllLines.Join(silent.AllLines, KeyOf, KeyOf, static (one, two) => (one, two)))
        {
            string before = ResultText.Calibration(one), after = ResultText.Calibration(two);
            if (!LineDoubt.IsIn(one) && !LineDoubt.IsIn(two) && !string.Equals(before, after, StringComparison.Ordinal))
            {
                return LawAnswer.Broken("without any evidence the same calibration: " + before, after);
            }
        }

        return answer;
    }

    private static (string Label, ToolId? Tool) KeyOf(LineConclusion line) => (line.Label, line.Line.Tool?.Id);
}
