using System;
using ToolLedger.Statistics;

namespace ToolLedger.Presence;

public sealed partial class StatedRiskPolicy
{
    /// <summary>Most looks of a pass that are searched for a plan.</summary>
    public const int MaxPlannedLooks = 1_000;

    /// <summary>What passes of so many looks reach: given a station and time, the risk it can come down to and how many lines it leaves open.</summary>
    /// <param name="passes">Passes in different positions; 1 to 6.</param>
    /// <param name="looks">Looks of each: antennas x time slots; 1 to 65,535.</param>
    /// <param name="lineCount">The lines of the kit; 1 to 100,000.</param>
    /// <param name="model">Which model: 0 (the default) for <see cref="Model"/>, n for the n-th of <see cref="Models"/>.</param>
    /// <returns>The plan.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of its range.</exception>
    public PresencePlan Plan(int passes, int looks, int lineCount, int model = 0)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(passes, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(passes, MaxPassCount);
        ArgumentOutOfRangeException.ThrowIfLessThan(looks, 1);
        Span<PassLooks> all = stackalloc PassLooks[MaxPassCount];
        all = all[..passes];
        all.Fill(new PassLooks(looks, looks) { Model = model });
        PresenceDecision best = Decide(all, lineCount);
        double settled = best.Threshold == int.MaxValue ? 0 : double.Min(1, ScoreSpread.Of(Box, PassKey.Of(all), isThere: true).AtLeast(best.Threshold));
        return new PresencePlan(passes, looks, settled, Elementary.Pow(settled, lineCount), ChanceAccountedWhenAbsent(all, lineCount), best.Risk);
    }

    /// <summary>The most steps that a search for a plan takes (ours): some seconds.</summary>
    private const double MostPlanSteps = 1L << 32;

    /// <summary>The fewest looks with which a tool that is there is accounted for with a stated chance: the fewest in all, and of those the fewest passes. Every number is tried, until 2^32 steps of the
    /// recursion over their scores were taken: a search for several passes of hundreds of looks ends there with the fewest it has found (<see cref="PresencePlan.IsSearchComplete"/>).</summary>
    /// <param name="chanceSettled">The chance aimed at; above 0, below 1.</param>
    /// <param name="lineCount">The lines of the kit; 1 to 100,000.</param>
    /// <param name="passesMax">The most passes; 1 to 6.</param>
    /// <param name="looksMax">The most looks of a pass; 1 to 1,000.</param>
    /// <returns>The plan; null where none reaches it, or none was found in so many steps.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of its range.</exception>
    public PresencePlan? PlanFor(double chanceSettled, int lineCount, int passesMax, int looksMax) => PlanFor(chanceSettled, lineCount, passesMax, looksMax, MostPlanSteps);

    internal PresencePlan? PlanFor(double chanceSettled, int lineCount, int passesMax, int looksMax, double mostSteps)
    {
        if (!(chanceSettled is > 0 and < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(chanceSettled), chanceSettled, "The chance must be above 0 and below 1.");
        }

        ArgumentOutOfRangeException.ThrowIfLessThan(passesMax, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(passesMax, MaxPassCount);
        ArgumentOutOfRangeException.ThrowIfLessThan(looksMax, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(looksMax, MaxPlannedLooks);
        PresencePlan? best = null;
        double steps = 0;
        for (int passes = 1; passes <= passesMax; passes++)
        {
            // More looks do not always help, since a pass that is silent in more of them speaks louder against a tool, and outcomes come in steps. So every number is tried that would be fewer in all.
            int most = best is null ? looksMax : int.Min(looksMax, ((best.Passes * best.Looks) - 1) / passes);
            for (int looks = 1; looks <= most; looks++)
            {
                // Two spreads: of a tag that is not there, and of one that is.
                steps += 2 * StepsOf(passes, looks);
                if (steps > mostSteps)
                {
                    return best is null ? null : best with { IsSearchComplete = false };
                }

                if (Plan(passes, looks, lineCount) is var plan && plan.ChanceSettled >= chanceSettled)
                {
                    best = plan;
                    break;
                }
            }
        }

        return best;
    }

    private double StepsOf(int passes, int looks)
    {
        Span<PassLooks> all = stackalloc PassLooks[MaxPassCount];
        all = all[..passes];
        all.Fill(new PassLooks(looks, 0));
        return looks + SpreadWork.Of(Box, PassKey.Of(all), ScoreSpread.MostWork).Steps;
    }
}
