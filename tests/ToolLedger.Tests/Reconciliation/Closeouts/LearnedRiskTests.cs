using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Statistics;
using ToolLedger.Testing.Simulation;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Reconciliation.Closeouts;

/// <summary>
/// The whole way of a site, on simulated sessions whose truth is not the model's own: learn a model from sessions that were confirmed, then judge other sessions by it. One tool in five is not there, and one
/// in five of those lies in a neighbour's open bag: more than any site has, so that there are cases to count. All of it is invented.
/// </summary>
public sealed class LearnedRiskTests
{
    private const int ToolCount = 20;
    private static readonly DateTimeOffset Start = new(2026, 3, 2, 15, 0, 0, TimeSpan.Zero);
    private static readonly SimulatedSite Site = SimulatedSite.Create(kitCount: 2, toolCount: ToolCount, Start.AddDays(-1));
    private static readonly SimulationSettings Settings = new() { ObscuredShare = 0.05, OneAntennaShare = 0, ReportsPerPassMean = 12, NeighbourFactor = 0.1 };

    // Bounds are Clopper and Pearson's at 99 %.
    [Fact]
    public void What_a_learned_model_claims_holds_on_sessions_it_has_not_seen()
    {
        int sessions = Environment.GetEnvironmentVariable("TOOLLEDGER_CLOSEOUTS") is { Length: > 0 } text ? int.Parse(text, NumberStyles.None, CultureInfo.InvariantCulture) : 200;
        var learner = new DetectionLearner();
        for (int seed = 1; seed <= 300; seed++)
        {
            Learn(learner, seed);
        }

        LearnedDetection learned = learner.Learn();
        Assert.True(learned.Model is not null, learned.ToString());
        var policy = new StatedRiskPolicy { Model = learned.Model };
        (int absent, int wrong, int there, int open) = (0, 0, 0, 0);
        double claimed = 0;
        for (int seed = 1001; seed <= 1000 + sessions; seed++)
        {
            HashSet<ToolId> missing = [.. Absent(seed)];
            ReadSession session = Session(seed);
            foreach (LineConclusion line in Conclude(session, policy).Lines.Where(static line => line.Line is ToolLine))
            {
                bool isThere = !missing.Contains(line.Line.Tool!.Id);
                (absent, wrong) = isThere ? (absent, wrong) : (absent + 1, wrong + (line.IsAccounted ? 1 : 0));
                (there, open) = isThere ? (there + 1, open + (line.IsAccounted ? 0 : 1)) : (there, open);
                claimed = claimed > 0 ? claimed : policy.ChanceAccountedWhenAbsent([.. session.Passes.Select(static pass => new PassLooks((int)pass.LookLimit, 0))], line.Evidence.Risk!.LineCount);
            }
        }

        string found = string.Create(CultureInfo.InvariantCulture, $"{wrong} of {absent} absent tools accounted for, {claimed:0.00000} claimed; {open} of {there} open; {policy.Model}");
        Assert.True(claimed is > 0 and <= 0.001 / (ToolCount * 0.01), found);
        Assert.True(BinomialDistribution.LowerLimit(wrong, absent, 0.99) <= claimed, found);

        // Without strays that were read, and lines settled and left open, nothing would have been tried.
        Assert.True(absent > 500 && open > 0 && open < there / 2 && policy.Model.StrayShare is > 0.1m and < 0.4m, found);
    }

    private static void Learn(DetectionLearner learner, int seed)
    {
        HashSet<ToolId> missing = [.. Absent(seed)];
        ReadSession session = Session(seed);
        foreach (ToolLine line in Site.Kits[0].Lines.OfType<ToolLine>())
        {
            IReadOnlyList<LookCell> cells = session.Find(TagOf(line.Tool.Id))?.Cells ?? [];
            PassLooks[] passes = [.. session.Passes.Select(pass => new PassLooks((int)pass.LookLimit, cells.Where(cell => cell.Pass == pass.Number).Sum(static cell => cell.LookCount)))];
            if (missing.Contains(line.Tool.Id))
            {
                learner.AddAbsent(passes);
            }
            else
            {
                learner.AddThere(passes);
            }
        }
    }

    private static TagId TagOf(ToolId tool) => Site.Tags.LiveTagsOf(tool, Start)[0].Tag;

    private static ReconciliationResult Conclude(ReadSession session, PresencePolicy policy) => new Reconciler(new ReconciliationPolicy { Presence = policy }).Reconcile(
        new ReconciliationInput { Kits = new KitRegister(Site.Kits), Subject = Site.Kits[0].Id, Sessions = [session], Tags = Site.Tags, AsOf = session.To });

    private static IEnumerable<ToolId> Absent(int seed)
    {
        var random = new Random(seed);
        return [.. Site.Kits[0].Lines.Where(static line => line is ToolLine).Select(static line => line.Tool!.Id).Where(_ => random.Next(5) == 0)];
    }

    private static ReadSession Session(int seed)
    {
        ToolId[] absent = [.. Absent(seed)];
        var random = new Random(-seed);
        ToolId[] near = [.. absent.Where(_ => random.Next(5) == 0)];
        SimulatedSession played = new SessionSimulator((ulong)seed, Settings).Run(new SessionScenario
        {
            Id = new SessionId("S-1"),
            Station = Site.Station,
            From = Start,
            PassCount = 2,
            Kits = [Holding(Site.Kits[0], Site.Kits[0].Lines.Select(static line => line.Tool?.Id).OfType<ToolId>().Except(absent))],
            Neighbours = near.Length == 0 ? [] : [Holding(Site.Kits[1], near)],
            Tags = Site.Tags,
            StrayCount = 0,
        });
        var builder = new ReadSessionBuilder(played.Presentation, new SessionPolicy());
        foreach (TagRead read in played.Reads)
        {
            builder.Add(read);
        }

        return builder.Close(Start.AddMinutes(2), played.ReaderClockOffsetAfter);
    }

    /// <summary>What truly is in a bag, written as a manifest for the simulator.</summary>
    private static KitManifest Holding(KitManifest bag, IEnumerable<ToolId> tools) => new(
        bag.Id, 1, "what is in it", bag.EffectiveFrom, bag.SignedBy, tools.Select(static (tool, i) => new ToolLine { Number = i + 1, Tool = new Tool { Id = tool, Description = tool.Value } }));
}
