using System;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Reconciliation;
using ToolLedger.Testing.Cases;

namespace ToolLedger.Testing.Laws;

/// <inheritdoc cref="ReconciliationLaw.SafeDefault"/>
internal sealed class SafeDefaultLaw : Law
{
    public override ReconciliationLaw Kind => ReconciliationLaw.SafeDefault;

    public override LawAnswer Try(LawTrial trial)
    {
        if (trial.Result.Kit.State == KitState.Complete && !trial.Result.AllLines.All(static line => line.IsAccounted))
        {
            return LawAnswer.Broken("a kit with an open line is not complete", trial.Result.Kit.ToString());
        }

        // Nothing of a session whose clock was never checked can be placed in time: no session is usable.
        ReconciliationCase blind = trial.Case with { Sessions = [.. trial.Case.Sessions.Select(static session => session with { ClockOffset = null, ClockOffsetAfter = null })] };
        LawAnswer answer = Without(trial, trial.Ask(blind));
        if (answer.IsBroken)
        {
            return answer;
        }

        ReconciliationResult nothing = trial.Ask(blind with { Sessions = [], Entries = new InventoryEntries(), Custody = [] });
        return nothing.Kit.State == KitState.Complete || nothing.AllLines.Any(static line => line.IsAccounted)
            ? LawAnswer.Broken("without any evidence no line is accounted for", nothing.AllLines.FirstOrDefault(static line => line.IsAccounted) is { } line ? ResultText.Line(line) : ResultText.Kit(nothing))
            : answer;
    }

    private static LawAnswer Without(LawTrial trial, ReconciliationResult result)
    {
        if (result.AllLines.FirstOrDefault(static line => line.Basis == AccountingBasis.Read || line.OtherBases.Contains(AccountingBasis.Read)) is { } line)
        {
            return LawAnswer.Broken("without a usable session no line rests on reads", ResultText.Line(line));
        }

        if (result.Kit.State == KitState.Complete)
        {
            bool isSaid = result.NoReadUsed && result.Kit.Reasons.Any(static reason => reason.Kind == ReconciliationReasons.KitNoReadUsed);
            if (!isSaid || !trial.Policy.Inventory.ManualInventoryAllowed || result.Persons.Count < trial.Policy.Inventory.ManualInventoryPersonsNeeded)
            {
                return LawAnswer.Broken("without a usable session a kit is complete only by enough people, where the policy allows it, and says that no read was used", ResultText.Kit(result));
            }
        }

        return LawAnswer.Holds;
    }
}
