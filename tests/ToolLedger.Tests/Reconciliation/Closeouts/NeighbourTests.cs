using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Testing.Simulation;
using Xunit;

namespace ToolLedger.Tests.Reconciliation.Closeouts;

/// <summary>The same simulated closeout with and without another kit beside it. Seeds are fixed.</summary>
public sealed class NeighbourTests
{
    private static readonly DateTimeOffset Start = new(2026, 3, 2, 15, 0, 0, TimeSpan.Zero);

    [Fact]
    public void A_neighbouring_bag_is_explained_and_never_helps_the_kit_under_check()
    {
        for (ulong seed = 1; seed <= 40; seed++)
        {
            SimulatedSite site = SimulatedSite.Create(kitCount: 2, toolCount: 12, Start);
            SessionScenario quiet = Scenario(site, []), noisy = Scenario(site, [site.Kits[1]]);
            ReconciliationResult alone = Close(seed, site, quiet), beside = Close(seed, site, noisy);

            Assert.All(
                beside.Reads.Where(read => read.Kit == site.Kits[1].Id && read.Kind is not (ReadExplanationKind.Repeat or ReadExplanationKind.OutsideWindow)),
                read => Assert.Equal(ReadExplanationKind.Unexpected, read.Kind));
            Assert.Equal(
                alone.Lines.Select(line => (line.Line.Number, line.State)),
                beside.Lines.Select(line => (line.Line.Number, line.State)));
        }
    }

    private static SessionScenario Scenario(SimulatedSite site, IReadOnlyList<KitManifest> neighbours) => new()
    {
        Id = new SessionId("S"),
        Station = site.Station,
        From = Start,
        PassLength = TimeSpan.FromSeconds(60),
        Kits = [site.Kits[0]],
        Neighbours = neighbours,
        Tags = site.Tags,
        StrayCount = 0,
    };

    private static ReconciliationResult Close(ulong seed, SimulatedSite site, SessionScenario scenario)
    {
        var policy = new ReconciliationPolicy();
        ReadSession session = new SessionSimulator(seed).Run(scenario).Close(policy.Sessions);
        return new Reconciler(policy).Reconcile(new ReconciliationInput
        {
            Kits = new KitRegister(site.Kits),
            Subject = site.Kits[0].Id,
            Sessions = [session],
            Tags = site.Tags,
            AsOf = session.To,
        });
    }
}
