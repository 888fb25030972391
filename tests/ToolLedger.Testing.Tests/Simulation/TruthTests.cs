using System.Linq;
using FsCheck.Xunit;
using ToolLedger.Reads;
using ToolLedger.Testing.Simulation;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Testing.Tests.Simulation;

public sealed class TruthTests
{
    private static readonly SimulatedSite Site = Scenes.Site(kits: 4, tools: 10);

    [Property(MaxTest = 50)]
    public void Every_read_belongs_to_a_tag_with_a_truth_and_absent_tags_have_none(ulong seed)
    {
        SimulatedSession session = new SessionSimulator(seed).Run(Scene());

        foreach (IGrouping<TagId, TagRead> group in session.Reads.GroupBy(read => read.Tag))
        {
            TagTruth truth = session.Find(group.Key)!;
            Assert.NotEqual(TagPlacement.Absent, truth.Placement);
            Assert.Equal(truth.ReportCount, group.Distinct().Count());
        }

        Assert.Equal(session.Truth.Count(truth => truth.ReportCount > 0), session.Reads.Select(read => read.Tag).Distinct().Count());
    }

    [Property(MaxTest = 20)]
    public void The_truth_covers_every_tag_of_the_scenario_once_with_its_place(ulong seed)
    {
        SimulatedSession session = new SessionSimulator(seed).Run(Scene());
        ILookup<TagPlacement, TagTruth> byPlacement = session.Truth.ToLookup(truth => truth.Placement);

        Assert.Equal(session.Truth.Count, session.Truth.Select(truth => truth.Tag).Distinct().Count());
        Assert.Equal(19, byPlacement[TagPlacement.Present].Count());
        Assert.Single(byPlacement[TagPlacement.Absent]);
        Assert.Equal(20, byPlacement[TagPlacement.Neighbour].Count());
        Assert.Equal(3, byPlacement[TagPlacement.Stray].Count());
        Assert.Single(byPlacement[TagPlacement.Control]);
        Assert.Equal(Scenes.ToolOf(Site, kit: 1, line: 3), Assert.Single(session.Truth, truth => truth.IsObscured).Tool);
        Assert.All(byPlacement[TagPlacement.Stray], truth => Assert.Null(truth.Tool));
        Assert.All(byPlacement[TagPlacement.Stray], truth => Assert.True(truth.ReportCount > 0));
        Assert.All(byPlacement[TagPlacement.Present], truth => Assert.Contains(truth.Kit, session.Presentation.Kits.Cast<Kits.KitId?>()));
    }

    [Fact]
    public void Reads_lie_within_the_session_and_passes_start_one_after_the_other()
    {
        SimulatedSession session = new SessionSimulator(3).Run(Scene());

        Assert.All(session.Reads, read => Assert.InRange(read.FirstSeen, session.Scenario.From, session.Scenario.To.AddTicks(-1)));
        Assert.Equal(session.Scenario.From.AddSeconds(60), Assert.Single(session.Presentation.PassStarts));
        Assert.Equal(session.Scenario.From.AddSeconds(120), session.Presentation.Until);
    }

    [Fact]
    public void The_builder_makes_a_valid_session_of_it()
    {
        ReadSession session = new SessionSimulator(3).Run(Scene()).Close(new SessionPolicy());

        Assert.Equal(SessionState.Valid, session.Health.State);
        Assert.True(session.RepeatCount > 0);
    }

    private static SessionScenario Scene() => Scenes.Presenting(
        Site,
        presented: 2,
        passes: 2,
        absent: [Scenes.ToolOf(Site, kit: 2, line: 1)],
        obscured: [Scenes.ToolOf(Site, kit: 1, line: 3)],
        strays: 3);
}
