using System;
using System.Linq;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>A tool that wore several tags: which of them count at a stated risk, and what is said of those that were retired.</summary>
public sealed class TagsOfOneToolTests
{
    private const int ListedLines = 15;

    // Each tag that could have shown the tool is one more chance for a stray to be taken for it; a tag that was gone before any session that is weighed is none.
    [Theory]
    [InlineData(-7 * 24 * 60, 1)]
    [InlineData(-1, 2)]
    [InlineData(0, 2)]
    public void A_tag_retired_before_every_session_that_can_count_makes_no_limit_stricter(int retiredMinutes, int tags)
    {
        World world = Retagged(World.Start.AddMinutes(retiredMinutes));

        LineConclusion line = world.Reconcile().Lines[4];

        Assert.Equal(ListedLines * tags, line.Evidence.Risk!.LineCount);
        Assert.Equal(tags > 1, line.Reasons.Any(static reason => reason.ToString().EndsWith($"for one of {2 * ListedLines} listed lines, each counted once for every tag of this tool", StringComparison.Ordinal)));
        Assert.Equal(tags == 1, line.Reasons.Any(static reason => reason.ToString().EndsWith($"for one of {ListedLines} listed lines", StringComparison.Ordinal)));
    }

    // Leaving a session out takes evidence away; it must not make the limit of a line any looser.
    [Fact]
    public void Leaving_a_session_out_leaves_the_number_of_tags()
    {
        World world = Retagged(World.Start.AddMinutes(5));
        world.AsOf = World.End.AddMinutes(12);
        ReadSession later = world.Session("S2", [World.K1], World.Later(world, 10), World.Start.AddMinutes(10));

        Assert.Equal(
            world.Reconcile(world.Session(), later).Lines[4].Evidence.Risk!.LineCount,
            world.Reconcile(later).Lines[4].Evidence.Risk!.LineCount);
    }

    [Fact]
    public void A_retired_tag_heard_in_two_sessions_is_one_reason_as_late_as_the_second()
    {
        World world = Retagged(World.Start.AddDays(-7)).Read("T5", World.A1, 9);
        world.AsOf = World.End.AddMinutes(12);
        ReadSession later = world.Session("S2", [World.K1], World.Later(world, 10), World.Start.AddMinutes(10));

        LineConclusion line = world.Reconcile(world.Session(), later).Lines[4];

        string said = Assert.Single(line.Reasons, static reason => reason.Kind == ReconciliationReasons.RetiredTagRead).ToString();
        Assert.Contains("15:05:09+00:00", said, StringComparison.Ordinal);
        Assert.Equal(LineState.Conflict, line.State);

        // A sighting between the two sessions does not settle what the second one heard.
        Assert.Equal(LineState.Conflict, world.Sight("T5", line.Line.Tool!.Mark!, World.K1, World.Start.AddMinutes(5)).Reconcile(world.Session(), later).Lines[4].State);
    }

    [Fact]
    public void A_line_counts_for_at_least_one_tag()
        => Assert.Throws<ArgumentOutOfRangeException>(static () => new PresenceEvidence { Tag = World.C1, Passes = [], Antennas = [], ToolTagCount = 0 });

    /// <summary>T5 wears another tag since its first one was retired.</summary>
    private static World Retagged(DateTimeOffset at)
    {
        var world = new World { Policy = new ReconciliationPolicy { Presence = new StatedRiskPolicy() } };
        TagBinding old = world.Bindings.Single(static binding => binding.Tool.Value == "T5");
        world.Bindings.Remove(old);
        world.Bindings.Add(new TagBinding { Tag = old.Tag, Tool = old.Tool, From = old.From, Until = at });
        TagId fresh = World.TagOf("N1");
        world.Bindings.Add(World.Binding(fresh, old.Tool));
        world.ReadAllBut("T5");
        return world.ReadAt(fresh, World.A1, World.Baseline, [.. Enumerable.Range(6, 48).Select(static half => half / 2.0)]);
    }
}
