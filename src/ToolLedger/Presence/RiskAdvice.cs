using System;
using ToolLedger.Statistics;

namespace ToolLedger.Presence;

/// <summary>Works out what settles an open line: by the model's own parameters, for a tool that is there, by exact sums.</summary>
internal sealed class RiskAdvice(StatedRiskPolicy policy, int lineCount, decimal absentShare)
{
    /// <summary>A way that settles fewer is not worth proposing (ours).</summary>
    public const double WorthTrying = 0.5;

    // More looks are proposed only where they settle nearly all, since nothing but time changes.
    private const double NearlyAll = 0.9;
    private const int MostLooksAhead = 2000;
    private const int MostLooksOfTwoPasses = 500;

    private readonly RiskBox box = policy.Box;

    public PresenceAdvice Of(ReadOnlySpan<PassLooks> passes, bool isTagPoor)
    {
        int looks = 0;
        foreach (PassLooks pass in passes)
        {
            looks = int.Max(looks, pass.Looks);
        }

        PresenceAdvice? best = null;
        if (looks > 0 && passes.Length < PassKey.MaxPasses)
        {
            double one = ChanceOfPasses(passes, looks, 1);
            if (one >= WorthTrying)
            {
                return new PresenceAdvice(PresenceAdviceKind.NewPasses, 1, looks, one, isTagPoor);
            }

            best = MoreLooks(passes, isTagPoor);
            if (best is null && passes.Length + 2 <= PassKey.MaxPasses && looks <= MostLooksOfTwoPasses && ChanceOfPasses(passes, looks, 2) is >= WorthTrying and var two)
            {
                best = new PresenceAdvice(PresenceAdviceKind.NewPasses, 2, looks, two, isTagPoor);
            }
        }

        return best ?? new PresenceAdvice(PresenceAdviceKind.Sighting, 0, 0, 1, isTagPoor);
    }

    /// <summary>The fewest more looks, in steps of half the last pass, that settle nearly every tool that is there; null where none do. A silent pass may be an obscured one, which no look changes.</summary>
    public PresenceAdvice? MoreLooks(ReadOnlySpan<PassLooks> passes, bool isTagPoor)
    {
        if (passes.Length == 0 || passes[^1] is { Reads: 0 } or { IsDegraded: true })
        {
            return null;
        }

        int step = int.Max(1, passes[^1].Looks / 2);
        for (int more = step; more <= 8 * step && passes[^1].Looks + more <= MostLooksAhead; more += step)
        {
            double chance = ChanceOfLooks(passes, more);
            if (chance >= NearlyAll)
            {
                return new PresenceAdvice(PresenceAdviceKind.MoreLooks, 0, more, chance, isTagPoor);
            }
        }

        return null;
    }

    /// <summary>The chance that a tool that is there is accounted for after so many more looks in the last pass, in which it was read.</summary>
    private double ChanceOfLooks(ReadOnlySpan<PassLooks> passes, int more)
    {
        Span<PassLooks> then = stackalloc PassLooks[PassKey.MaxPasses];
        passes.CopyTo(then);
        then = then[..passes.Length];
        PassLooks last = passes[^1];
        BetaRate present = policy.ModelOf(last.Model).Present;
        double a = (double)present.A + last.Reads;
        double b = (double)present.B + (last.Looks - last.Reads);
        double[] further = BetaBinomial.LogAll(more, a, b);
        double sum = 0;
        for (int reads = more; reads >= 0; reads--)
        {
            then[^1] = last with { Looks = last.Looks + more, Reads = last.Reads + reads };
            if (policy.Decide(then, lineCount, absentShare).State != PresenceState.Accounted)
            {
                break;
            }

            sum += Elementary.Exp(further[reads]);
        }

        return double.Min(1, sum);
    }

    /// <summary>The chance that a tool that is there is accounted for after one or two more passes, in the surroundings of the last one and by its model.</summary>
    private double ChanceOfPasses(ReadOnlySpan<PassLooks> passes, int looks, int count)
    {
        Span<PassLooks> then = stackalloc PassLooks[PassKey.MaxPasses];
        passes.CopyTo(then);
        var next = new PassLooks(looks, 0) { Surroundings = passes[^1].Surroundings, Model = passes[^1].Model };
        for (int i = 0; i < count; i++)
        {
            then[passes.Length + i] = next;
        }

        then = then[..(passes.Length + count)];
        PassScores of = box.ScoresOf(next);
        double obscured = box.Of(next.Model).Obscured;
        double silent = Elementary.Exp(DetectionModel.LogSilent(obscured, of.LogPresent[0]));
        // How often a pass that is not obscured has so many reads, and at least so many, summed from the top.
        double[] exactly = new double[looks + 1], atLeast = new double[looks + 2];
        for (int reads = looks; reads > 0; reads--)
        {
            exactly[reads] = Elementary.Exp(of.LogPresent[reads]);
            atLeast[reads] = atLeast[reads + 1] + exactly[reads];
        }

        double sum = 0;
        int first = then.Length - count;

        // Accounted from some number of reads on, which falls as the other pass has more.
        int needed = looks + 1;
        for (int other = count == 1 ? -1 : 0; other <= (count == 1 ? -1 : looks); other++)
        {
            if (other >= 0)
            {
                then[^1] = next with { Reads = other };
            }

            needed = Needed(then, first, int.Min(needed, looks), looks);
            double chance = (atLeast[int.Max(1, needed)] * (1 - obscured)) + (needed == 0 ? silent : 0);
            sum += chance * (other < 0 ? 1 : other == 0 ? silent : (1 - obscured) * exactly[other]);
        }

        return double.Min(1, sum);
    }

    /// <summary>The fewest reads of a pass with which the line is accounted, at most those given plus one; more than its looks where none are enough.</summary>
    private int Needed(Span<PassLooks> passes, int index, int from, int looks)
    {
        PassLooks pass = passes[index];
        passes[index] = pass with { Reads = from };
        if (!IsAccounted(passes, index))
        {
            // Looked for from above only where the start was not enough.
            from = looks;
            passes[index] = pass with { Reads = from };
            if (!IsAccounted(passes, index))
            {
                return looks + 1;
            }
        }

        while (from > 0)
        {
            passes[index] = pass with { Reads = from - 1 };
            if (!IsAccounted(passes, index))
            {
                break;
            }

            from--;
        }

        return from;
    }

    // New passes are those of a session of its own, which has to suffice by itself too.
    private bool IsAccounted(ReadOnlySpan<PassLooks> passes, int firstNew)
        => IsAccounted(passes) && (firstNew == 0 || IsAccounted(passes[firstNew..]));

    private bool IsAccounted(ReadOnlySpan<PassLooks> passes) => policy.Decide(passes, lineCount, absentShare).State == PresenceState.Accounted;
}
