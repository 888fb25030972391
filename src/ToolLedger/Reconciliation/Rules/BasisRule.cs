using System.Collections.Generic;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation.Rules;

/// <summary>Without a basis a line is weak, not read or not assessed, in that order of what its reads show.</summary>
internal sealed class BasisRule : IReconciliationRule
{
    public string Name => "basis";

    public string Version => "1";

    public string Settings => "";

    public Verdict Judge(in LineFacts facts)
    {
        // What a sub-kit without a case holds is another rule's matter.
        if (facts.Bases.Count > 0 || facts.Line is SubKitLine { Case: null })
        {
            return Verdict.NoObjection;
        }

        var reasons = new List<Reason>();
        if (facts.Presence is { } presence)
        {
            return FromReads(facts, presence, reasons);
        }

        reasons.Add(WhyNotAssessed(facts));
        reasons.AddRange(facts.Remarks);
        return Verdict.Withhold(LineState.NotAssessed, reasons, StepForSilence(facts), isPositiveDifference: false);
    }

    private static Verdict FromReads(in LineFacts facts, PresenceJudgement presence, List<Reason> reasons)
    {
        if (facts.ReadsWithheld is { } elsewhere && presence.State != PresenceState.NotRead)
        {
            reasons.Add(elsewhere);
        }
        else
        {
            reasons.AddRange(presence.Reasons);
        }

        reasons.AddRange(facts.Remarks);
        if (presence.State == PresenceState.NotRead)
        {
            return Verdict.Withhold(LineState.NotRead, reasons, Steps.PresentAgain(facts.Line), isPositiveDifference: false);
        }

        bool degraded = facts.BestEvidence is { } best && Contains(best.Passes);
        return Verdict.Withhold(LineState.Weak, reasons, degraded ? Steps.SecondPass(facts.Line) : Steps.SightTool(facts.Line), isPositiveDifference: false);
    }

    private static Reason WhyNotAssessed(in LineFacts facts) => facts.Line switch
    {
        CountedLine or ConsumableLine => new Reason(ReconciliationReasons.NotCounted),
        _ when facts.LiveTags.Count == 0 => new Reason(ReconciliationReasons.NoLiveTag),
        _ => new Reason(ReconciliationReasons.NoUsableSession),
    };

    private static NextStep StepForSilence(in LineFacts facts) => facts.Line switch
    {
        ToolLine or SubKitLine when facts.LiveTags.Count > 0 => Steps.PresentAtStation(facts.Line),
        ToolLine or SubKitLine => Steps.SightTool(facts.Line),
        _ => Steps.CountItems(facts.Line),
    };

    private static bool Contains(IReadOnlyList<PassEvidence> passes)
    {
        foreach (PassEvidence pass in passes)
        {
            if (pass.IsDegraded)
            {
                return true;
            }
        }

        return false;
    }
}
