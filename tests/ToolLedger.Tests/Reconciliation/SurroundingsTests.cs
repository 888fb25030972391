using System;
using System.Linq;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>Trade scenario S94 at a stated risk: somebody says that the surroundings were changed, so that being a stray nearby is asked anew. The kit, its reads and the model (that of the example) are invented.</summary>
public sealed class SurroundingsTests
{
    // Given: T3 lies in K2's open bag beside the station and gets 5 reads on A2; a second pass, with K2 moved away, does not read it.
    [Fact]
    public void S94_A_tag_heard_only_before_the_change_is_weak_and_its_line_says_who_changed_what()
    {
        World world = TwoPasses(static world => world.Read("T3", World.A2, 5, 6, 7, 8, 9));
        PresenceRisk unchanged = world.Reconcile().Lines[2].Evidence.Risk!;
        world.Changes.Add(Moved(15));
        LineConclusion line = world.Reconcile().Lines[2];

        Assert.Equal(LineState.Weak, line.State);
        Reason reason = Assert.Single(line.Reasons, static reason => reason.Kind == RiskReasons.SurroundingsChanged);
        Assert.StartsWith("the surroundings were changed between passes (bag K2 moved to the rack, by P at 2026-03-02", reason.ToString(), StringComparison.Ordinal);

        // The silence after the change speaks against the tool by itself: a tool nearby would be gone, one in the bag would not. The bound, which holds silence to one read, may hide that from the decision.
        Assert.Equal([PresenceTermKind.Prior, PresenceTermKind.Read, PresenceTermKind.ReadPass, PresenceTermKind.Silence], line.Evidence.Risk!.Terms.Select(static term => term.Kind));
        Assert.True(line.Evidence.Risk.ExactRisk > unchanged.ExactRisk);
    }

    // With K2 noted as standing there, its leaving explains every look: not read, as under every policy.
    [Fact]
    public void S94_Where_the_neighbour_is_noted_its_leaving_explains_every_look()
    {
        World world = TwoPasses(static world => world.Read("T3", World.A2, 5, 6, 7, 8, 9)).StandsNearby(World.K2, -60, 14);
        world.Changes.Add(Moved(15));
        LineConclusion line = world.Reconcile().Lines[2];

        Assert.Equal((LineState.NotRead, 0), (line.State, line.Evidence.LookCount));
        Assert.Contains(line.Reasons, static reason => reason.Kind == ReconciliationReasons.OnlyWhileNearby);
    }

    [Fact]
    public void A_tag_heard_before_and_after_the_change_would_have_to_be_a_stray_twice()
    {
        World world = TwoPasses(static world => world.Read("T3", World.A1, 5, 6, 7, 20, 21, 22));
        PresenceRisk unchanged = world.Reconcile().Lines[2].Evidence.Risk!;
        world.Changes.Add(Moved(15));
        PresenceRisk changed = world.Reconcile().Lines[2].Evidence.Risk!;

        Assert.True(changed.Decision.Risk < unchanged.Decision.Risk);
        Assert.Equal(2, changed.Terms.Count(static term => term.Kind == PresenceTermKind.Read));
    }

    // Part of such a pass was in each of the two surroundings, so that it says nothing of either by itself.
    [Theory]
    [InlineData(10)]
    [InlineData(20)]
    [InlineData(-5)]
    [InlineData(40)]
    public void A_change_in_the_midst_of_a_pass_or_outside_of_all_separates_nothing(double second)
    {
        World world = TwoPasses(static world => world.Read("T3", World.A1, 5, 6, 7, 20, 21, 22));
        PresenceRisk unchanged = world.Reconcile().Lines[2].Evidence.Risk!;
        world.Changes.Add(Moved(second));
        LineConclusion line = world.Reconcile().Lines[2];

        Assert.Equal(unchanged.Decision, line.Evidence.Risk!.Decision);
        Assert.DoesNotContain(line.Reasons, static reason => reason.Kind == RiskReasons.SurroundingsChanged);
    }

    [Fact]
    public void A_change_between_two_sessions_is_stated_by_either_and_told_once()
    {
        World world = Read(new World { Policy = Policy() }.Read("T3", World.A1, 5, 6, 7), 6);
        world.AsOf = World.End.AddMinutes(30);
        ReadSession first = world.Session("S1");
        world.Changes.AddRange([Moved(200), Moved(120)]);
        ReadSession second = world.Session("S2", [World.K1], World.Later(world, 10), World.Start.AddMinutes(10));
        LineConclusion line = world.Reconcile(first, second).Lines[2];

        Assert.Equal(2, line.Evidence.Risk!.Terms.Count(static term => term.Kind == PresenceTermKind.Read));

        // Of several between the same passes the last is told.
        Reason reason = Assert.Single(line.Reasons, static reason => reason.Kind == RiskReasons.SurroundingsChanged);
        Assert.Contains("14:58:20", reason.ToString(), StringComparison.Ordinal);
    }

    // A neighbour's bag that travels along would be heard at both stations: what one of them changed separates nothing then.
    [Fact]
    public void Passes_at_several_stations_are_separated_by_no_change()
    {
        World world = Read(new World { Policy = Policy() }.Read("T3", World.A1, 5, 6, 7), 6);
        world.AsOf = World.End.AddMinutes(30);
        world.Changes.Add(Moved(120));
        ReadSession first = world.Session("S1");
        var builder = new ReadSessionBuilder(
            new Presentation
            {
                Id = new SessionId("S2"),
                Station = new ReadStation { Id = new StationId("R2"), Antennas = [World.A1, World.A2], ControlTags = [new ControlTag(World.C1, World.A1), new ControlTag(World.C1, World.A2)] },
                Kits = [World.K1],
                From = World.Start.AddMinutes(10),
                ReaderClockOffset = TimeSpan.Zero,
            },
            world.Policy.Sessions);
        foreach (TagRead read in World.Later(world, 10))
        {
            builder.Add(read);
        }

        LineConclusion line = world.Reconcile(first, builder.Close(World.End.AddMinutes(10), TimeSpan.Zero)).Lines[2];

        Assert.Single(line.Evidence.Risk!.Terms, static term => term.Kind == PresenceTermKind.Read);
        Assert.DoesNotContain(line.Reasons, static reason => reason.Kind == RiskReasons.SurroundingsChanged);
    }

    [Fact]
    public void A_change_noted_in_an_open_session_is_the_same_as_one_that_was_stated_before_and_is_under_the_digest()
    {
        World world = TwoPasses(static world => world.Read("T3", World.A1, 5, 6, 7));
        Digest none = world.Session().Digest;
        world.Changes.Add(Moved(15));
        ReadSession stated = world.Session();
        world.Changes.Clear();
        ReadSession noted = Noted(world, Moved(15)), other = Noted(world, Moved(16));

        Assert.Equal(stated.SurroundingsChanges, noted.SurroundingsChanges);
        Assert.Equal(4, new[] { none, stated.Digest, noted.Digest, other.Digest }.Distinct().Count());
        Assert.Equal(world.Reconcile(stated).Lines[2].Reasons, world.Reconcile(noted).Lines[2].Reasons);
    }

    [Fact]
    public void Who_changed_what_and_when_must_be_said()
    {
        Assert.Throws<ArgumentException>(static () => new SurroundingsChange(World.Start, default, "bag moved"));
        Assert.Throws<ArgumentException>(static () => new SurroundingsChange(World.Start, World.P, " "));
        Assert.Throws<ArgumentOutOfRangeException>(static () => new SurroundingsChange(default, World.P, "bag moved"));
        byte[] json = """{"schema":"toolledger/presentation/1","session":"S","station":{"id":"R1","antennas":[1]},"kits":[],"from":"2026-03-02T15:00:00Z","surroundingsChanges":[{"at":"2026-03-02T15:00:00Z","what":"bag moved"}]}"""u8.ToArray();
        Assert.False(Presentation.TryParse(json, out _, out var issues));
        Assert.Equal("$.surroundingsChanges[0]", Assert.Single(issues).Place);
    }

    private static ReadSession Noted(World world, SurroundingsChange change)
    {
        var builder = new ReadSessionBuilder(world.Session().Presentation, world.Policy.Sessions);
        builder.NoteChange(change);
        foreach (TagRead read in world.ControlReads().Concat(world.Reads))
        {
            builder.Add(read);
        }

        return builder.Close(World.End, TimeSpan.Zero);
    }

    private static SurroundingsChange Moved(double second) => new(World.Start.AddSeconds(second), World.P, "bag K2 moved to the rack");

    private static World TwoPasses(Action<World> reads)
    {
        var world = new World { Policy = Policy() };
        world.PassStarts.Add(World.Start.AddSeconds(15));
        reads(world);
        return Read(world, 6, 20);
    }

    private static World Read(World world, params double[] starts)
    {
        foreach (string tool in World.AllTools().Where(static tool => tool[0] is 'T' or 'H' && tool != "T3"))
        {
            foreach (double start in starts)
            {
                world.Read(tool, World.A1, start, start + 1, start + 2, start + 3);
                world.Read(tool, World.A2, start + 1, start + 2);
            }
        }

        return world.CountAll();
    }

    private static ReconciliationPolicy Policy() => new() { Presence = new StatedRiskPolicy { KitRiskLimit = 0.01m } };
}
