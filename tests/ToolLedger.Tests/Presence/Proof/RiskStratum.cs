using System.Linq;
using ToolLedger.Presence;
using ToolLedger.Statistics;

namespace ToolLedger.Tests.Presence.Proof;

/// <summary>Kits of one kind: how well their tags answer, their size, their passes, and a truth that may differ from the policy's model.</summary>
internal sealed class RiskStratum(string quality, StatedRiskPolicy policy, RiskShape shape, RiskTruth truth)
{
    /// <summary>The share of tools that are not there (ours); none are drawn more often than that.</summary>
    public const double Absent = 0.01;

    private readonly DetectionModel tags = truth.Of(policy.Model);
    private readonly PassLooks[] silent = [.. shape.Looks.Select((looks, index) => new PassLooks(looks, 0) { Surroundings = shape.IsChanged ? index : 0 })];

    public string Quality => quality;

    public string Row => $"{quality} tags, {shape.Name}";

    public string Name => $"{Row}, {truth.Name}";

    public RiskTruth Truth => truth;

    public StatedRiskPolicy Policy => policy;

    public double Limit => (double)policy.KitRiskLimit;

    /// <summary>The chance that a tool that is not there is accounted for at the worst corner, by the policy's own recursion.</summary>
    public double WorstChance => policy.ChanceAccountedWhenAbsent(silent, shape.Lines);

    /// <summary>The largest risk at which a line is accounted for.</summary>
    public double Cut => policy.Decide(silent, shape.Lines).Cut;

    /// <summary>The chance that a tool is accounted for by this truth: a plain sum over everything that may be read, which shares nothing with the policy's recursion.</summary>
    public double ChanceAccounted(bool isThere)
    {
        double share = isThere || shape.IsChanged ? 1 : (double)tags.StrayShare;
        return Sum(0, share, [.. silent], isThere);
    }

    /// <summary>The exact risk of a kit by this truth: that at least one accounted tool is not there.</summary>
    public double KitRisk => -Elementary.ExpMinus1(shape.Lines * Elementary.LogOnePlus(-Absent * ChanceAccounted(isThere: false)));

    public RiskTally Run(int kits, int absentTools, ulong seed)
    {
        var chance = new ModelSampler(tags, shape.Looks, seed, shape.IsChanged);
        var tally = new RiskTally();
        PassLooks[] passes = [.. silent];
        for (int kit = 0; kit < kits; kit++)
        {
            RunKit(chance, passes, tally);
        }

        for (int tool = 0; tool < absentTools; tool++)
        {
            tally.AbsentTools++;
            tally.AbsentAccounted += Accounts(chance, passes, isThere: false, out _) ? 1 : 0;
        }

        return tally;
    }

    private void RunKit(ModelSampler chance, PassLooks[] passes, RiskTally tally)
    {
        bool isWrong = false, isOpen = false;
        double sound = 1;
        for (int line = 0; line < shape.Lines; line++)
        {
            bool isThere = chance.Unit() >= Absent;
            bool isAccounted = Accounts(chance, passes, isThere, out double risk);
            tally.There += isThere ? 1 : 0;
            tally.ThereOpen += isThere && !isAccounted ? 1 : 0;
            isWrong |= isAccounted && !isThere;
            isOpen |= !isAccounted;
            sound *= isAccounted ? 1 - risk : 1;
        }

        bool isComplete = !isOpen && 1 - sound <= Limit;
        tally.Kits++;
        tally.Lines += shape.Lines;
        tally.WrongKits += isWrong ? 1 : 0;
        tally.CompleteKits += isComplete ? 1 : 0;
        tally.WrongComplete += isWrong && isComplete ? 1 : 0;
    }

    private bool Accounts(ModelSampler chance, PassLooks[] passes, bool isThere, out double risk)
    {
        if (isThere)
        {
            chance.There(passes);
        }
        else
        {
            chance.Absent(passes);
        }

        PresenceDecision decision = policy.Decide(passes, shape.Lines);
        bool isAccounted = decision.State == PresenceState.Accounted;
        risk = isAccounted ? decision.Risk : 0;
        return isAccounted;
    }

    private double Sum(int index, double chance, PassLooks[] passes, bool isThere)
    {
        if (index == passes.Length)
        {
            return policy.Decide(passes, shape.Lines).State == PresenceState.Accounted ? chance : 0;
        }

        double sum = 0;
        int looks = passes[index].Looks;
        for (int reads = 0; reads <= looks; reads++)
        {
            double here = Elementary.Exp(isThere ? tags.LogPresent(looks, reads) : tags.LogStray(looks, reads));
            if (!isThere && shape.IsChanged)
            {
                here = ((double)tags.StrayShare * here) + (reads == 0 ? 1 - (double)tags.StrayShare : 0);
            }

            passes[index] = passes[index] with { Reads = reads };
            sum += Sum(index + 1, chance * here, passes, isThere);
        }

        return sum;
    }
}
