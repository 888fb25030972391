using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Reconciliation;

namespace ToolLedger.Testing.Laws;

/// <inheritdoc cref="ReconciliationLaw.RulesOnlyWithhold"/>
internal sealed class RulesOnlyWithholdLaw : Law
{
    public override ReconciliationLaw Kind => ReconciliationLaw.RulesOnlyWithhold;

    public override LawAnswer Try(LawTrial trial)
    {
        if (trial.Rule is not { } rule)
        {
            return LawAnswer.Silent;
        }

        ReconciliationInput input = trial.ToInput(trial.Case);
        ReconciliationResult without = new Reconciler(trial.Policy).Reconcile(input);
        foreach ((LineConclusion with, LineConclusion plain) in trial.Result.AllLines.Zip(without.AllLines))
        {
            // Where the rule withholds lines inside, of a partly settled box nothing may be left to be called partial: both are open.
            if (with.State > plain.State && (with.IsAccounted || with.Line is not SubKitLine))
            {
                return LawAnswer.Changed($"with the rule no better than without it: {plain}", ResultText.Line(plain), ResultText.Line(with));
            }
        }

        if (trial.Result.Kit.State == KitState.Complete && without.Kit.State != KitState.Complete)
        {
            return LawAnswer.Changed($"with the rule no better than without it: {without.Kit}", ResultText.Kit(without), ResultText.Kit(trial.Result));
        }

        Reconciler before = new(trial.Policy, [rule, new SilentRule()]), after = new(trial.Policy, [new SilentRule(), rule]);
        return before.PolicyDigest != after.PolicyDigest
            ? LawAnswer.Broken("the same name, version and settings whenever they are asked for", "another policy digest")
            : LawAnswer.Same("the same answer whatever the place of the rule", ResultText.Whole(before.Reconcile(input)), ResultText.Whole(after.Reconcile(input)));
    }
}
