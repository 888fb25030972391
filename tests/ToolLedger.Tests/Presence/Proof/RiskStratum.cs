using System;
using ToolLedger.Presence;

namespace ToolLedger.Tests.Presence.Proof;

/// <summary>Kits of one kind: how well their tags answer, their size, their passes, and a truth that may differ from the policy's model within its box.</summary>
internal sealed class RiskStratum
{
    public const int Looks = 20;
    private const double Absent = 0.01;

    private readonly DetectionModel truth;

    public RiskStratum(string quality, BetaRate rate, int lines, int passes, string world, decimal obscuredFactor, decimal strayFactor)
    {
        (Lines, Passes) = (lines, passes);
        Name = $"{quality} tags, {lines} tools, {passes} x {Looks} looks, {world}";
        Model = new DetectionModel(0.05m, rate, 0.05m, new BetaRate(0.6m, 8));
        Policy = new StatedRiskPolicy { Model = Model };
        IsOwnTruth = obscuredFactor == 1 && strayFactor == 1;
        truth = new DetectionModel(Model.ObscuredShare * obscuredFactor, rate, Model.StrayShare * strayFactor, Model.Stray);
    }

    public string Name { get; }

    public int Lines { get; }

    public int Passes { get; }

    public bool IsOwnTruth { get; }

    public DetectionModel Model { get; }

    public StatedRiskPolicy Policy { get; }

    public RiskTally Run(int kits, int absentTools, ulong seed)
    {
        var chance = new ModelSampler(truth, Looks, seed);
        var tally = new RiskTally();
        for (int kit = 0; kit < kits; kit++)
        {
            RunKit(chance, tally);
        }

        for (int tool = 0; tool < absentTools; tool++)
        {
            tally.AbsentTools++;
            tally.AbsentAccounted += Accounts(chance, isThere: false, out _) ? 1 : 0;
        }

        return tally;
    }

    private void RunKit(ModelSampler chance, RiskTally tally)
    {
        bool isWrong = false, isOpen = false;
        double sound = 1;
        for (int line = 0; line < Lines; line++)
        {
            bool isThere = chance.Unit() >= Absent;
            bool isAccounted = Accounts(chance, isThere, out double risk);
            tally.There += isThere ? 1 : 0;
            tally.ThereOpen += isThere && !isAccounted ? 1 : 0;
            isWrong |= isAccounted && !isThere;
            isOpen |= !isAccounted;
            sound *= isAccounted ? 1 - risk : 1;
        }

        tally.Kits++;
        tally.WrongKits += isWrong ? 1 : 0;
        tally.CompleteKits += !isOpen && 1 - sound <= (double)Policy.KitRiskLimit ? 1 : 0;
        tally.WrongComplete += isWrong && !isOpen && 1 - sound <= (double)Policy.KitRiskLimit ? 1 : 0;
    }

    private bool Accounts(ModelSampler chance, bool isThere, out double risk)
    {
        Span<PassLooks> passes = stackalloc PassLooks[Passes];
        if (isThere)
        {
            chance.There(passes);
        }
        else
        {
            chance.Absent(passes);
        }

        PresenceDecision decision = Policy.Decide(passes, Lines);
        risk = decision.Risk;
        return decision.State == PresenceState.Accounted;
    }
}
