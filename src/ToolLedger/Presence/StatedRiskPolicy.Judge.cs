using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Records;
using ToolLedger.Statistics;

namespace ToolLedger.Presence;

public sealed partial class StatedRiskPolicy
{
    private static readonly Reason NoLook = new(PresenceReasons.NoLook);
    private static readonly Reason EpcOnly = new(PresenceReasons.EpcOnly);

    /// <inheritdoc/>
    public override PresenceJudgement Judge(PresenceEvidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        int[] chosen = Choose(evidence.Passes);
        if (Array.Exists(chosen, index => evidence.Passes[index].LookLimit > DetectionModel.MaxLooks))
        {
            return TooManyLooks(evidence);
        }

        int lines = (int)long.Min((long)(evidence.KitLineCount < 1 ? LineCountAssumed : evidence.KitLineCount) * evidence.ToolTagCount, MaxLineCount);
        decimal absent = evidence.AbsentShare is { } share ? decimal.Round(decimal.Clamp(share, MinAbsentShare, MaxAbsentShare), 9) : AbsentShare;
        Span<PassLooks> room = stackalloc PassLooks[2 * MaxPassCount];
        Span<PassLooks> all = Fill(room[..MaxPassCount], evidence, chosen, withTidOnly: false);
        Span<PassLooks> passes = all;
        PresenceDecision decision = Decide(all, lines, absent);
        bool isSetAside = false;
        int[]? last = LastOf(evidence, chosen);
        if (last is not null)
        {
            Span<PassLooks> ofLast = Fill(room[MaxPassCount..], evidence, last, withTidOnly: false);
            PresenceDecision byLast = Decide(ofLast, lines, absent);
            if (byLast.LogOdds < decision.LogOdds || (byLast.State != PresenceState.Accounted && decision.State == PresenceState.Accounted))
            {
                isSetAside = decision.State != PresenceState.NotRead;
                (chosen, decision) = (last, byLast);
                passes = ofLast;
            }
        }

        bool isEpcRefused = decision.State == PresenceState.Accounted && IsEpcRefused(evidence, chosen, lines, absent);

        // What was not weighed was heard all the same.
        PresenceState state = isEpcRefused || (decision.State == PresenceState.NotRead && evidence.LookCount > 0) ? PresenceState.Weak : decision.State;
        (PresenceAdvice? advice, PresenceAdvice? looksToo) = state == PresenceState.Accounted ? default : AdviceOf(evidence, all, last is null, lines, absent);
        List<PresenceTerm> terms = TermsOf(evidence, chosen, passes, decision);
        PresenceRisk risk = RiskOf(evidence, passes, decision, lines, absent, terms, advice);
        var reasons = new List<Reason>(4);
        Explain(decision, state, lines, evidence.ToolTagCount, passes, isSetAside, reasons);
        if (state == PresenceState.Accounted)
        {
            AddPrior(evidence, reasons);
        }
        else
        {
            AddTerms(evidence, terms, decision, reasons);
            AddExact(risk, reasons);
            AddWays(advice!, looksToo, passes, isEpcRefused, reasons);
            CountingPolicy.AddBaseline(evidence, reasons);
            CountingPolicy.AddHistory(evidence, reasons, isSilent: state == PresenceState.NotRead);
        }

        if (!evidence.HasTid && state != PresenceState.NotRead)
        {
            reasons.Add(EpcOnly);
        }

        return new PresenceJudgement(state, reasons) { Risk = risk };
    }

    private bool IsEpcRefused(PresenceEvidence evidence, int[] chosen, int lines, decimal absent) => !EpcOnlyAccepted
        && Decide(Fill(stackalloc PassLooks[MaxPassCount], evidence, chosen, withTidOnly: true), lines, absent).State != PresenceState.Accounted;

    /// <summary>What settles an open line; more looks in the same position are proposed only where one session is weighed.</summary>
    private (PresenceAdvice Advice, PresenceAdvice? MoreLooks) AdviceOf(PresenceEvidence evidence, ReadOnlySpan<PassLooks> passes, bool isOneSession, int lines, decimal absent)
    {
        var ways = new RiskAdvice(this, lines, absent);
        bool isTagPoor = evidence.History is { } history && history.SessionsRead * 3L < history.SessionsPresented * 2L;
        PresenceAdvice advice = ways.Of(passes, isTagPoor);
        return isOneSession ? (advice, ways.MoreLooks(passes, isTagPoor))
            : (advice.Kind == PresenceAdviceKind.MoreLooks ? new PresenceAdvice(PresenceAdviceKind.Sighting, 0, 0, 1, isTagPoor) : advice, null);
    }

    private static void AddWays(PresenceAdvice advice, PresenceAdvice? looksToo, ReadOnlySpan<PassLooks> passes, bool isEpcRefused, List<Reason> reasons)
    {
        if (isEpcRefused)
        {
            reasons.Add(new Reason(PresenceReasons.EpcOnlyNotAccepted));
        }
        else if (!advice.IsTagPoor)
        {
            // Of a tag that has to be qualified again the history speaks, and no number of reads.
            AddAdvice(advice, looksToo, passes, reasons);
        }
    }

    private PresenceRisk RiskOf(
        PresenceEvidence evidence, ReadOnlySpan<PassLooks> passes, in PresenceDecision decision, int lines, decimal absent, List<PresenceTerm> terms, PresenceAdvice? advice)
    {
        return new PresenceRisk
        {
            Decision = decision,
            ExactRisk = 1 / (1 + Elementary.Exp(DetectionModel.LogOdds(passes, (double)absent, isBounded: false, ModelOf))),
            LineCount = lines,
            AbsentShare = absent,
            AbsentShareWhy = evidence.AbsentShare is null ? null : evidence.AbsentShareWhy,
            ObscuredShare = ObscuredAt(passes.IsEmpty ? 0 : passes[0].Model, EvidenceScore.IsHigh(decision.Evidence.Corner, 0)),
            StrayShare = StrayAt(passes, isRead: terms.Exists(static term => term.Kind == PresenceTermKind.Read)),
            Terms = terms,
            Advice = advice,
        };
    }

    /// <summary>The passes from the start of the last session on, where there are earlier ones that are weighed too; else null.</summary>
    private static int[]? LastOf(PresenceEvidence evidence, int[] chosen)
    {
        int[] last = Array.FindAll(chosen, index => evidence.Passes[index].IsLast);
        return last.Length > 0 && last.Length < chosen.Length ? last : null;
    }

    /// <summary>The passes of the last session first, then those that offered most looks, then the later ones, in the order given: which they are does not depend on what was read in them.</summary>
    internal static int[] Choose(IReadOnlyList<PassEvidence> passes)
    {
        int[] all = new int[passes.Count];
        for (int i = 0; i < all.Length; i++)
        {
            all[i] = i;
        }

        if (all.Length <= MaxPassCount)
        {
            return all;
        }

        Array.Sort(all, (left, right) =>
        {
            int order = passes[right].IsLast.CompareTo(passes[left].IsLast);
            order = order != 0 ? order : passes[right].LookLimit.CompareTo(passes[left].LookLimit);
            return order != 0 ? order : right.CompareTo(left);
        });
        int[] chosen = all[..MaxPassCount];
        Array.Sort(chosen);
        return chosen;
    }

    private Span<PassLooks> Fill(Span<PassLooks> into, PresenceEvidence evidence, int[] chosen, bool withTidOnly)
    {
        for (int i = 0; i < chosen.Length; i++)
        {
            PassEvidence pass = evidence.Passes[chosen[i]];
            int looks = (int)long.Max(0, pass.LookLimit);
            into[i] = new PassLooks(looks, int.Clamp(withTidOnly ? pass.TidLookCount : pass.LookCount, 0, looks))
            {
                Surroundings = pass.Surroundings,
                IsDegraded = pass.IsDegraded,
                Model = NumberOf(pass.Station, evidence.Mounting),
            };
        }

        return into[..chosen.Length];
    }

    /// <summary>The numbers of the models that weighed passes, each once. The terms name them only where they stand for one pass, so that silence throughout would have none.</summary>
    internal IEnumerable<int> ModelsOf(PresenceEvidence? evidence)
    {
        IReadOnlyList<PassEvidence> passes = evidence?.Passes ?? [];
        return Choose(passes).Select(index => passes[index]).Where(static pass => pass.LookLimit > 0).Select(pass => NumberOf(pass.Station, evidence!.Mounting)).Distinct();
    }

    /// <summary>The logarithms of the probability that a tag is silent in all its passes, if it is there and if it is not, at the model's own parameters.</summary>
    internal (double IfThere, double IfAbsent) LogSilence(PresenceEvidence evidence)
    {
        double there = 0, stray = 0;
        decimal? strays = null;
        foreach (PassEvidence pass in evidence.Passes)
        {
            int looks = (int)long.Clamp(pass.LookLimit, 0, DetectionModel.MaxLooks);
            DetectionModel model = ModelOf(NumberOf(pass.Station, evidence.Mounting));
            there += model.LogPresent(looks, 0);
            stray += model.LogStray(looks, 0);
            strays = decimal.Min(strays ?? 1, model.StrayShare);
        }

        return (there, DetectionModel.LogAbsentSilent((double)(strays ?? Model.StrayShare), stray));
    }

    private double ObscuredAt(int model, bool isHigh) => isHigh ? Box.Of(model).ObscuredHigh : Box.Of(model).ObscuredLow;

    /// <summary>The cautious end over the models of all passes.</summary>
    private double StrayAt(ReadOnlySpan<PassLooks> passes, bool isRead)
    {
        double? found = null;
        foreach (PassLooks pass in passes)
        {
            ModelBox of = Box.Of(pass.Model);
            found = isRead ? double.Max(found ?? 0, of.StrayHigh) : double.Min(found ?? 1, of.StrayLow);
        }

        return found ?? (isRead ? Box.Of(0).StrayHigh : Box.Of(0).StrayLow);
    }

    private static PresenceJudgement TooManyLooks(PresenceEvidence evidence) => evidence.LookCount == 0
        ? new PresenceJudgement(PresenceState.NotRead, [NoLook])
        : new PresenceJudgement(PresenceState.Weak, [new Reason(PresenceReasons.TooManyLooks, ("limit", Text(DetectionModel.MaxLooks)))]);

    private static void Explain(in PresenceDecision decision, PresenceState state, int lines, int tags, ReadOnlySpan<PassLooks> passes, bool isSetAside, List<Reason> reasons)
    {
        string chance = RiskWords.Chance(decision.Risk), percent = RiskWords.Percent(decision.Risk);
        if (state == PresenceState.NotRead)
        {
            reasons.Add(NoLook);
            reasons.Add(new Reason(PresenceReasons.SilentRisk, ("chance", RiskWords.Chance(1 - decision.Risk)), ("percent", RiskWords.Percent(1 - decision.Risk))));
            return;
        }

        int looks = 0, heard = 0, reads = 0;
        foreach (PassLooks pass in passes)
        {
            looks += pass.Looks;
            reads += pass.Reads;
            heard += pass.Reads > 0 ? 1 : 0;
        }

        ReadOnlySpan<(string, string)> values =
        [
            ("reads", Text(reads)), ("looks", Text(looks)), ("heard", Text(heard)), ("passes", Text(passes.Length)),
            ("chance", chance), ("percent", percent), ("cut", RiskWords.Percent(decision.Cut)), ("lines", Text(lines)), ("tags", Text(tags)),
        ];
        reasons.Add(new Reason(
            state == PresenceState.Accounted || decision.State == PresenceState.Accounted ? PresenceReasons.RiskWithin
            : decision.Cut == 0 ? PresenceReasons.RiskOutOfReach
            : decision.Risk <= decision.Cut ? PresenceReasons.RiskOfDegraded : PresenceReasons.RiskOver, values));
        if (isSetAside)
        {
            reasons.Add(new Reason(PresenceReasons.EarlierSetAside));
        }
    }

    /// <summary>Which odds before the session were used is told where they are not the policy's own.</summary>
    private static void AddPrior(PresenceEvidence evidence, List<Reason> reasons)
    {
        if (evidence is { AbsentShare: not null, AbsentShareWhy: { } why })
        {
            reasons.Add(why);
        }
    }

    private static void AddTerms(PresenceEvidence evidence, List<PresenceTerm> terms, in PresenceDecision decision, List<Reason> reasons)
    {
        foreach (PresenceTerm term in terms)
        {
            reasons.Add(TermSentences.Of(term));
            if (term.Kind == PresenceTermKind.Prior)
            {
                AddPrior(evidence, reasons);
            }
        }

        reasons.Add(new Reason(PresenceReasons.TermSum, ("odds", RiskWords.Odds(decision.LogOdds))));
    }

    /// <summary>Where bound and box weigh much, what the model says without them is told beside.</summary>
    private static void AddExact(PresenceRisk risk, List<Reason> reasons)
    {
        if (risk.ExactRisk < risk.Decision.Risk / 2)
        {
            reasons.Add(new Reason(PresenceReasons.RiskExact, ("chance", RiskWords.Chance(risk.ExactRisk)), ("percent", RiskWords.Percent(risk.ExactRisk))));
        }
    }

    private static void AddAdvice(PresenceAdvice advice, PresenceAdvice? looksToo, ReadOnlySpan<PassLooks> passes, List<Reason> reasons)
    {
        (string, string) looks = ("looks", Text(advice.Looks)), percent = ("percent", Text((int)(advice.Chance * 100)));
        bool isLastSilent = passes.Length == 0 || passes[^1].Reads == 0;
        switch (advice.Kind)
        {
            case PresenceAdviceKind.NewPasses:
                reasons.Add(new Reason(PresenceReasons.AdviceNewPasses, ("passes", Text(advice.Passes)), looks, percent));
                break;
            case PresenceAdviceKind.MoreLooks:
                reasons.Add(new Reason(PresenceReasons.AdviceMoreLooks, looks, percent));
                return;
            default:
                reasons.Add(new Reason(PresenceReasons.AdviceSighting));
                break;
        }

        reasons.Add(looksToo is null
            ? new Reason(isLastSilent ? PresenceReasons.AdviceMayBeObscured : PresenceReasons.AdviceNoLooks)
            : new Reason(PresenceReasons.AdviceMoreLooks, ("looks", Text(looksToo.Looks)), ("percent", Text((int)(looksToo.Chance * 100)))));
    }

    private static double Units(int score) => (double)score / PassScores.StepsPerUnit;

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
