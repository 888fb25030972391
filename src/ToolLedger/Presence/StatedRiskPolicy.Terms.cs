using System;
using System.Collections.Generic;

namespace ToolLedger.Presence;

/// <content>The terms that add up to the odds.</content>
public sealed partial class StatedRiskPolicy
{
    private List<PresenceTerm> TermsOf(PresenceEvidence evidence, int[] chosen, ReadOnlySpan<PassLooks> passes, in PresenceDecision decision)
    {
        int corner = decision.Evidence.Corner;
        RiskBox box = Box;
        Span<int> slots = stackalloc int[MaxPassCount];
        PassSlots.Fill(passes, slots);
        var terms = new List<PresenceTerm>(passes.Length + 2) { new(PresenceTermKind.Prior, Units(decision.Prior)) };
        box.ScoreOf(passes, out bool isRead);
        for (int first = 0; first < passes.Length; first++)
        {
            if (!DetectionModel.IsFirstOfItsSurroundings(passes, first))
            {
                continue;
            }

            int surroundings = passes[first].Surroundings;
            int group = box.ScoreOfSurroundings(passes, slots, corner, surroundings, isRead, out bool asStray);
            if (!asStray)
            {
                terms.Add(SilenceOf(passes, surroundings, group));
                continue;
            }

            terms.Add(new PresenceTerm(PresenceTermKind.Read, Units(box.StrayOf(passes, surroundings).Score)));
            for (int i = first; i < passes.Length; i++)
            {
                if (passes[i].Surroundings == surroundings && passes[i].Looks > 0)
                {
                    terms.Add(TermOf(evidence.Passes[chosen[i]], passes[i], EvidenceScore.IsHigh(corner, slots[i])));
                }
            }
        }

        return terms;
    }

    private static PresenceTerm SilenceOf(ReadOnlySpan<PassLooks> passes, int surroundings, int score)
    {
        long looks = 0;
        foreach (PassLooks pass in passes)
        {
            looks += pass.Surroundings == surroundings ? pass.Looks : 0;
        }

        return new PresenceTerm(PresenceTermKind.Silence, Units(score)) { Looks = (int)looks };
    }

    private PresenceTerm TermOf(PassEvidence evidence, PassLooks pass, bool isHigh)
    {
        PassScores of = Box.ScoresOf(pass);
        return new PresenceTerm(pass.Reads > 0 ? PresenceTermKind.ReadPass : PresenceTermKind.SilentPass, Units(Box.ScoreOf(pass, isHigh)))
        {
            Session = evidence.Session,
            Pass = evidence.Pass,
            Looks = pass.Looks,
            Reads = pass.Reads,
            IsBounded = pass.Reads == 0 && (isHigh ? of.IsBoundedHigh : of.IsBoundedLow),
            IsDegraded = pass.IsDegraded,
            Model = pass.Model,
            ObscuredShare = ObscuredAt(pass.Model, isHigh),
        };
    }
}
