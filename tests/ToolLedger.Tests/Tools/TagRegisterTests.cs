using System;
using System.Collections.Generic;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ToolLedger.Records;
using ToolLedger.Testing.Generators;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Tools;

public sealed class TagRegisterTests
{
    private static readonly DateTimeOffset Start = new(2026, 3, 1, 0, 0, 0, TimeSpan.Zero);
    private static readonly TagId Tag = TagId.Parse("3034257BF7194E4000001A85");

    [Property(Arbitrary = [typeof(AnyTagRegister), typeof(AnyTime)])]
    public bool Every_look_up_agrees_with_looking_at_every_binding(TagRegister register, DateTimeOffset at) =>
        register.Bindings.All(known =>
            register.FindLive(known.Tag, at) == register.Bindings.SingleOrDefault(b => b.Tag == known.Tag && b.IsLiveAt(at))
            && register.HistoryOf(known.Tag).SequenceEqual(register.Bindings.Where(b => b.Tag == known.Tag).OrderBy(b => b.From))
            && register.HistoryOf(known.Tool).ToHashSet().SetEquals(register.Bindings.Where(b => b.Tool == known.Tool))
            && register.LiveTagsOf(known.Tool, at).ToHashSet().SetEquals(register.Bindings.Where(b => b.Tool == known.Tool && b.IsLiveAt(at))));

    [Property(Arbitrary = [typeof(AnyTagRegister)])]
    public bool Starts_are_included_and_ends_excluded(TagRegister register) => register.Bindings.All(binding =>
        register.FindLive(binding.Tag, binding.From) == binding
        && register.FindLive(binding.Tag, binding.From.AddTicks(-1)) != binding
        && (binding.Until is not { } until || (register.FindLive(binding.Tag, until) != binding && register.FindLive(binding.Tag, until.AddTicks(-1)) == binding)));

    [Property(Arbitrary = [typeof(AnyTagRegister)])]
    public bool The_order_in_which_bindings_are_given_changes_nothing(TagRegister register, int seed)
    {
        TagBinding[] shuffled = [.. register.Bindings];
        new Random(seed).Shuffle(shuffled);
        return new TagRegister(shuffled, register.Quarantines.Reverse()).Digest == register.Digest;
    }

    /// <summary>Moment 3 of the trade: a second person checks mark against tag, and whoever bound the tag is not that person, however the id is typed.</summary>
    [Theory]
    [InlineData("Q", true)]
    [InlineData("P", false)]
    [InlineData("p-", false)]
    public void Who_bound_a_tag_does_not_check_it(string checker, bool isAccepted)
    {
        var binding = new TagBinding { Tag = Tag, Tool = new ToolId("T1"), From = Start, BoundBy = new PersonId("P"), CheckedBy = new PersonId(checker) };

        Assert.Equal(isAccepted, TagRegister.TryCreate([binding], out TagRegister? register, out IReadOnlyList<RecordIssue> issues));
        Assert.Equal(isAccepted ? [] : ["$.bindings[0].checkedBy tag.checked-by-binder"], issues.Select(static issue => $"{issue.Place} {issue.Rule}"));
        Assert.True(register is null || TagRegister.Parse(register.ToJson()).Bindings[0].CheckedBy == binding.CheckedBy);
    }

    /// <summary>Property 8 of the trade: a later effective time never changes an earlier instant.</summary>
    [Property(Arbitrary = [typeof(AnyTagRegister)])]
    public bool A_binding_that_starts_later_changes_no_earlier_instant(TagRegister register)
    {
        DateTimeOffset later = Start.AddYears(1);
        TagBinding[] closed = [.. register.Bindings.Where(b => b.Until is not null)];
        var before = new TagRegister(closed);
        var after = new TagRegister(closed.Concat(closed.DistinctBy(b => b.Tag).Select(b => Bind(b.Tag, "T99", later, null))));
        return closed.All(b => before.FindLive(b.Tag, later.AddTicks(-1)) == after.FindLive(b.Tag, later.AddTicks(-1))
            && before.FindLive(b.Tag, b.From) == after.FindLive(b.Tag, b.From));
    }

    [Property(Arbitrary = [typeof(AnyTagRegister)])]
    public bool A_second_live_tool_is_refused_wherever_it_overlaps(TagRegister register)
    {
        foreach (TagBinding binding in register.Bindings)
        {
            var overlap = Bind(binding.Tag, "T99", binding.Until?.AddTicks(-1) ?? binding.From.AddHours(1), null);
            bool made = TagRegister.TryCreate([overlap, .. register.Bindings], out _, out IReadOnlyList<RecordIssue> issues);
            if (made || !issues.Any(issue => issue.Reason.Kind == TagRules.LiveOnTwoTools))
            {
                return false;
            }
        }

        return true;
    }

    [Fact]
    public void A_long_binding_hides_no_overlap_with_a_later_one()
    {
        TagBinding[] bindings =
        [
            Bind(Tag, "T1", Start, Start.AddHours(10)),
            Bind(Tag, "T1", Start.AddHours(1), Start.AddHours(2)),
            Bind(Tag, "T2", Start.AddHours(5), Start.AddHours(6)),
        ];
        Assert.False(TagRegister.TryCreate(bindings, out _, out IReadOnlyList<RecordIssue> issues));
        Assert.Equal("$.bindings[1] tag.duplicate-binding, $.bindings[2] tag.live-on-two-tools",
            string.Join(", ", issues.Select(issue => $"{issue.Place} {issue.Rule}")));
    }

    [Fact]
    public void A_binding_that_ends_when_or_before_it_starts_is_refused()
    {
        Assert.Equal("tag.ends-before-it-starts", Assert.Throws<RecordException>(() => new TagRegister([Bind(Tag, "T1", Start, Start)])).Issues.Single().Rule);
        Assert.Equal("tag.ends-before-it-starts", Assert.Throws<RecordException>(() => new TagRegister([Bind(Tag, "T1", Start, Start.AddTicks(-1))])).Issues.Single().Rule);
    }

    [Fact]
    public void A_tag_may_follow_itself_onto_another_tool_at_the_instant_it_left_the_first()
    {
        var register = new TagRegister([Bind(Tag, "T1", Start, Start.AddHours(1)), Bind(Tag, "T2", Start.AddHours(1), null)]);
        Assert.Equal("T1", register.FindLive(Tag, Start.AddHours(1).AddTicks(-1))?.Tool.Value);
        Assert.Equal("T2", register.FindLive(Tag, Start.AddHours(1))?.Tool.Value);
        Assert.Null(register.FindLive(Tag, Start.AddTicks(-1)));
        Assert.Null(register.FindLive(TagId.Parse("AAAA"), Start));
    }

    [Fact]
    public void An_instant_is_compared_and_not_its_clock_reading()
    {
        var register = new TagRegister([Bind(Tag, "T1", Start, Start.AddHours(1))]);
        Assert.NotNull(register.FindLive(Tag, Start.AddMinutes(30).ToOffset(TimeSpan.FromHours(10))));
    }

    /// <summary>Property 12 of the trade: words differ, the decoded identity is that of a live tool (here: another filter value).</summary>
    [Fact]
    public void A_tag_written_anew_is_told_by_its_decoded_identity_while_the_tool_is_live()
    {
        TagId rewritten = TagId.Parse("3074257BF7194E4000001A85");
        var register = new TagRegister([Bind(Tag, "T1", Start, Start.AddHours(1)), Bind(TagId.FromText("x"), "T2", Start, null)]);
        Assert.Equal("T1", register.ToolByDecodedIdentity(rewritten, Start)?.Value);
        Assert.Null(register.FindLive(rewritten, Start));
        Assert.Null(register.ToolByDecodedIdentity(rewritten, Start.AddHours(1)));
        Assert.Null(register.ToolByDecodedIdentity(Tag, Start));
        Assert.Null(register.ToolByDecodedIdentity(TagId.Parse("3074257BF7194E4000001A86"), Start));
        Assert.Null(register.ToolByDecodedIdentity(TagId.Parse("FFFF"), Start));
        Assert.Null(register.ToolByDecodedIdentity(TagId.FromText("x"), Start));
    }

    [Fact]
    public void Two_tags_that_differ_in_the_filter_value_only_are_flagged_when_on_two_tools_at_one_time()
    {
        TagId filter0 = TagId.Parse("3014257BF7194E4000001A85"), filter1 = TagId.Parse("3034257BF7194E4000001A85");
        RecordIssue issue = Assert.Single(new TagRegister([Bind(filter0, "T1", Start, null), Bind(filter1, "T2", Start.AddHours(1), null)]).FindSharedIdentities());
        Assert.Equal("$.bindings[1] tag.same-identity-on-two-tools", $"{issue.Place} {issue.Rule}");

        Assert.Empty(new TagRegister([Bind(filter0, "T1", Start, Start.AddHours(1)), Bind(filter1, "T2", Start.AddHours(1), null)]).FindSharedIdentities());
        Assert.Empty(new TagRegister([Bind(filter0, "T1", Start, null), Bind(filter1, "T1", Start, null)]).FindSharedIdentities());
    }

    [Property(Arbitrary = [typeof(AnyTagRegister)])]
    public bool Shared_identities_are_those_that_comparing_every_pair_finds(TagRegister register, byte[] tools)
    {
        // Words of one identity in eight filter values, so that pairs do occur.
        var more = tools.Take(8).Select((tool, filter) => Bind(TagId.Parse($"30{(filter << 5) | 0x14:X2}257BF7194E4000001A85"), $"T{tool % 3}",
            Start.AddHours(tool % 7), tool % 2 == 0 ? null : Start.AddHours((tool % 7) + 1 + (tool % 5))));
        var all = new TagRegister(register.Bindings.Concat(more));
        int[] expected = [.. Enumerable.Range(0, all.Count).Where(index => all.Bindings.Any(other => IsEarlierTwin(other, all.Bindings[index])))];

        return expected.SequenceEqual(all.FindSharedIdentities().Select(issue => int.Parse(issue.Place[11..^1], System.Globalization.CultureInfo.InvariantCulture)).Order());

        bool IsEarlierTwin(TagBinding other, TagBinding binding) => other.Tool != binding.Tool && other.Tag != binding.Tag
            && other.Tag.Kind == TagIdKind.Epc && binding.Tag.Kind == TagIdKind.Epc
            && other.Tag.Epc.ToPureIdentityUri() is { } uri && uri.StartsWith("urn:epc:id:", StringComparison.Ordinal)
            && uri.Equals(binding.Tag.Epc.ToPureIdentityUri(), StringComparison.Ordinal)
            && other.IsLiveAt(binding.From) && (other.From < binding.From || other.Tag.CompareTo(binding.Tag) < 0);
    }

    [Fact]
    public void A_quarantine_concerns_the_binding_of_its_tag_and_tool_that_began_last_by_then()
    {
        TagBinding first = Bind(Tag, "T1", Start, Start.AddHours(1)), between = Bind(Tag, "T2", Start.AddHours(1), Start.AddHours(2)), again = Bind(Tag, "T1", Start.AddHours(2), null);
        BindingQuarantine early = Doubt(Tag, "T1", Start.AddMinutes(90)), late = Doubt(Tag, "T1", Start.AddHours(3));
        var register = new TagRegister([first, between, again], [late, early]);

        Assert.Equal([early], register.QuarantinesOf(first));
        Assert.Empty(register.QuarantinesOf(between));
        Assert.Equal([late], register.QuarantinesOf(again));
        Assert.Equal([early, late], register.Quarantines);
    }

    [Fact]
    public void A_quarantine_stands_from_its_start_until_it_is_cleared_with_name_and_reason()
    {
        var cleared = new BindingQuarantine
        {
            Tag = Tag,
            Tool = new ToolId("T1"),
            From = Start,
            By = new PersonId("Q"),
            Reason = "loose",
            ClearedAt = Start.AddHours(1),
            ClearedBy = new PersonId("P"),
            ClearedReason = "glued",
        };
        Assert.Equal([false, true, true, false], new[] { -1, 0, 59, 60 }.Select(minute => cleared.StandsAt(Start.AddMinutes(minute))));
        Assert.True(Doubt(Tag, "T1", Start).StandsAt(Start.AddYears(5)));

        var half = new BindingQuarantine { Tag = Tag, Tool = new ToolId("T1"), From = Start, By = new PersonId("Q"), Reason = "loose", ClearedAt = Start.AddHours(1) };
        Assert.False(TagRegister.TryCreate([Bind(Tag, "T1", Start, null)], [half], out _, out IReadOnlyList<RecordIssue> issues));
        Assert.Equal("$.quarantines[0] tag.clearing-incomplete", string.Join("; ", issues.Select(issue => $"{issue.Place} {issue.Rule}")));
        Assert.Throws<ArgumentException>(() => new BindingQuarantine { Tag = Tag, Tool = new ToolId("T1"), From = Start, By = default, Reason = "loose" });
    }

    [Fact]
    public void Every_tool_with_a_live_tag_of_the_identity_may_be_the_one_of_a_tag_written_anew()
    {
        var register = new TagRegister(
        [
            Bind(TagId.Parse("3014257BF7194E4000001A85"), "T1", Start, null),
            Bind(TagId.Parse("3034257BF7194E4000001A85"), "T2", Start.AddHours(-1), null),
        ]);
        Assert.Equal(["T2", "T1"], register.ToolsByDecodedIdentity(TagId.Parse("3074257BF7194E4000001A85"), Start).Select(tool => tool.Value));
    }

    [Fact]
    public void The_empty_register_knows_nothing()
    {
        Assert.Equal(0, TagRegister.Empty.Count);
        Assert.Null(TagRegister.Empty.FindLive(Tag, Start));
        Assert.Empty(TagRegister.Empty.HistoryOf(Tag));
        Assert.Empty(TagRegister.Empty.LiveTagsOf(new ToolId("T1"), Start));
        Assert.Null(TagRegister.Empty.ToolByDecodedIdentity(Tag, Start));
    }

    private static BindingQuarantine Doubt(TagId tag, string tool, DateTimeOffset from) =>
        new() { Tag = tag, Tool = new ToolId(tool), From = from, By = new PersonId("Q"), Reason = "loose" };

    private static TagBinding Bind(TagId tag, string tool, DateTimeOffset from, DateTimeOffset? until) =>
        new() { Tag = tag, Tool = new ToolId(tool), From = from, Until = until };
}
