using System.Collections.Generic;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation.Rules;

/// <summary>Without a basis a line is weak, not read or not assessed, in that order of what its reads show.</summary>
internal sealed class BasisRule : IReconciliationRule
{
    public string Name => "basis";

    public string Version => "4";

    public string Settings => "";

    public Verdict Judge(in LineFacts facts)
    {
        // What a sub-kit without a case holds is another rule's matter.
        if (facts.Bases.Count > 0 || facts.Line is SubKitLine { Case: null })
        {
            return Verdict.NoObjection;
        }

        var reasons = new List<Reason>();
        if (facts.SealDoubt is { } doubt && facts.Presence is null or { State: PresenceState.NotRead })
        {
            // A closed case is silent by itself: that its tools were not read says nothing of them.
            return Verdict.Withhold(LineState.NotAssessed, [doubt, .. facts.Remarks], facts.Line is ToolLine or SubKitLine ? SightTool(facts) : Steps.CountItems(facts.Line), isPositiveDifference: false);
        }

        if (facts.Presence is { } presence)
        {
            return FromReads(facts, presence, reasons);
        }

        if (!IsCountVoid(facts, out NextStep? countAgain))
        {
            reasons.Add(WhyNotAssessed(facts));
        }

        reasons.AddRange(facts.Remarks);
        return Verdict.Withhold(LineState.NotAssessed, reasons, countAgain ?? StepForSilence(facts), isPositiveDifference: false);
    }

    private static Verdict FromReads(in LineFacts facts, PresenceJudgement presence, List<Reason> reasons)
    {
        if (presence.State == PresenceState.NotRead && KitThatStoodNear(facts) is { } kit)
        {
            // The tag was heard, so neither silence nor what its history says of silence is the matter.
            return Verdict.Withhold(LineState.NotRead, facts.Remarks, Steps.LookInKit(facts.Line, kit), isPositiveDifference: false);
        }

        if (facts.ReadsWithheld is { } elsewhere && presence.State != PresenceState.NotRead)
        {
            reasons.Add(elsewhere);
        }
        else
        {
            reasons.AddRange(presence.Reasons);
        }

        reasons.AddRange(facts.Remarks);
        if (presence.Risk is { Advice: { } advice } risk && facts.ReadsWithheld is null && !facts.IsMarkShared)
        {
            return Verdict.Withhold(presence.State == PresenceState.NotRead ? LineState.NotRead : LineState.Weak, reasons, Steps.ByAdvice(facts.Line, risk, advice), isPositiveDifference: false);
        }

        if (presence.State == PresenceState.NotRead)
        {
            return Verdict.Withhold(LineState.NotRead, reasons, StepForNoLook(facts, presence), isPositiveDifference: false);
        }

        bool degraded = facts.BestEvidence is { } best && Contains(best.Passes);
        return Verdict.Withhold(LineState.Weak, reasons, degraded ? Steps.SecondPass(facts.Line) : SightTool(facts), isPositiveDifference: false);
    }

    /// <summary>Presenting again is the fastest, unless the tag's history says that it rarely answers, or somebody has looked already and read a mark that several tools carry.</summary>
    private static NextStep StepForNoLook(in LineFacts facts, PresenceJudgement presence)
    {
        if (facts.IsMarkShared)
        {
            return Has(facts.Remarks, ReconciliationReasons.SharedMark) ? SightTool(facts) : Steps.PresentAgain(facts.Line);
        }

        return Has(presence.Reasons, PresenceReasons.PoorHistory) ? Steps.QualifyTag(facts.Line) : Steps.PresentAgain(facts.Line);
    }

    private static bool Has(IReadOnlyList<Reason> reasons, ReasonKind kind)
    {
        foreach (Reason reason in reasons)
        {
            if (reason.Kind == kind)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The kit whose nearness alone explains every look; null if none does.</summary>
    private static string? KitThatStoodNear(in LineFacts facts)
    {
        foreach (Reason remark in facts.Remarks)
        {
            if (remark.Kind == ReconciliationReasons.OnlyWhileNearby)
            {
                return ValueOf(remark, "kit");
            }
        }

        return null;
    }

    /// <summary>True where somebody counted, but not so that it says what is there: parts that nobody joined, or a use since.</summary>
    private static bool IsCountVoid(in LineFacts facts, out NextStep? next)
    {
        next = null;
        foreach (Reason remark in facts.Remarks)
        {
            if (remark.Kind == PeopleReasons.PartsNotJoined)
            {
                next = new NextStep(NextStepKind.CountItems, new Reason(PeopleReasons.StepJoinParts, ("parts", ValueOf(remark, "parts"))));
            }
            else if (remark.Kind == PeopleReasons.UsedSinceCounted)
            {
                next = Steps.CountAgain(facts.Line);
            }
        }

        return next is not null;
    }

    private static string ValueOf(Reason reason, string name)
    {
        foreach (KeyValuePair<string, string> pair in reason.Values)
        {
            if (string.Equals(pair.Key, name, System.StringComparison.Ordinal))
            {
                return pair.Value;
            }
        }

        return "";
    }

    private static NextStep SightTool(in LineFacts facts) => facts is { IsMarkShared: true, Line.Tool.Mark: { } mark }
        ? new NextStep(NextStepKind.SightTool, new Reason(PeopleReasons.StepTellApart, ("mark", mark)))
        : Steps.SightTool(facts.Line);

    private static Reason WhyNotAssessed(in LineFacts facts) => facts.Line switch
    {
        CountedLine or ConsumableLine => new Reason(ReconciliationReasons.NotCounted),
        _ when facts.LiveTags.Count == 0 => new Reason(ReconciliationReasons.NoLiveTag),
        _ => new Reason(ReconciliationReasons.NoUsableSession),
    };

    private static NextStep StepForSilence(in LineFacts facts) => facts.Line switch
    {
        ToolLine or SubKitLine when facts.LiveTags.Count > 0 && !Has(facts.Remarks, ReconciliationReasons.SharedMark) => Steps.PresentAtStation(facts.Line),
        ToolLine or SubKitLine => SightTool(facts),
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
