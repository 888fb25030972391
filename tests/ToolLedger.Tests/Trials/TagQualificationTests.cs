using System;
using System.Linq;
using FsCheck.Xunit;
using MathNet.Numerics.Distributions;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;
using ToolLedger.Trials;
using Xunit;

namespace ToolLedger.Tests.Trials;

/// <summary>Moment 2 of the trade, qualifying a tag and its mounting, and the weak-tag warnings of moment 4. Tags and tools are invented.</summary>
public sealed class TagQualificationTests
{
    private static readonly DateTimeOffset Start = new(2026, 3, 1, 0, 0, 0, TimeSpan.Zero);
    private static readonly DateTimeOffset Later = Start.AddDays(9);

    /// <summary>The figure the trade's own table gives: 20 of 20 good presentations still allow about a 14 % miss rate, one-sided 95 %: 1 - 0.05^(1/20).</summary>
    [Fact]
    public void Twenty_of_twenty_is_not_a_hundred_percent()
    {
        TagQualification tag = Qualify(Tried("T1", 20, 20));

        Assert.Equal(Math.Floor((decimal)Math.Pow(0.05, 1 / 20.0) * 10_000) / 10_000, tag.Worst!.ReadShareAtLeast);
        Assert.Equal((0.8608m, 1m, false), (tag.Worst.ReadShareAtLeast, tag.Worst.ReadShareAtMost, tag.IsQualified));
        Assert.Equal("read in 20 of 20 presentations: at a confidence of 95 % it may be missed in up to 14 of 100; nothing was missed, but it takes 29 presentations without a miss to show 90 %", tag.Reason.ToString());
        Assert.True(Qualify(Tried("T1", 29, 29)).IsQualified);
        Assert.False(Qualify(Tried("T1", 28, 28)).IsQualified);
    }

    /// <summary>The limits are those of Clopper and Pearson as MathNet.Numerics 5.0.0 (MIT) computes them from the beta distribution, rounded to the cautious side.</summary>
    [Property(MaxTest = 300)]
    public void The_limits_enclose_the_share_and_agree_with_another_library(ushort first, ushort second)
    {
        int presented = 1 + (first % 2000), read = second % (presented + 1);
        TrialFigure figure = Qualify(Tried("T1", presented, read)).Worst!;
        double low = read == 0 ? 0 : Beta.InvCDF(read, presented - read + 1, 0.05), high = read == presented ? 1 : Beta.InvCDF(read + 1, presented - read, 0.95);

        Assert.InRange(low - (double)figure.ReadShareAtLeast, -1e-8, 1.0001e-4);
        Assert.InRange((double)figure.ReadShareAtMost - high, -1e-8, 1.0001e-4);
        Assert.True(figure.ReadShareAtLeast < 1);
        Assert.InRange((decimal)read / presented, figure.ReadShareAtLeast, figure.ReadShareAtMost);
    }

    [Theory]
    [InlineData(0.9, 0.95, 29)] // 0.95 to the power of 1/n: the usual plan of a demonstration without a failure, common practice
    [InlineData(0.95, 0.95, 59)]
    [InlineData(0.99, 0.95, 299)]
    [InlineData(0.9, 0.9, 22)]
    public void So_many_presentations_without_a_miss_show_a_share(double share, double confidence, int expected) =>
        Assert.Equal(expected, TagQualification.PresentationsNeeded((decimal)share, (decimal)confidence));

    [Fact]
    public void The_worst_setting_in_the_full_kit_counts_and_neither_the_bench_nor_one_antenna_does()
    {
        TagTrial dry = Tried("T1", 400, 400), wet = Tried("T1", 60, 41, "wet"), bench = Tried("T1", 1000, 1000, isInFullKit: false);
        TagQualification tag = Qualify(dry, wet, bench);

        Assert.Equal(("wet", 60, 41), (tag.Worst!.Setting, tag.Worst.Presented, tag.Worst.Read));
        Assert.Equal(TrialReasons.Weak, tag.Reason.Kind);
        Assert.Equal([(true, null), (true, "wet"), (false, null)], tag.Figures.Select(figure => (figure.IsInFullKit, figure.Setting)));
        Assert.True(Qualify(dry, bench).IsQualified);

        Assert.Equal((TrialReasons.OnlyOnBench, false), (Qualify(bench).Reason.Kind, Qualify(bench).IsQualified));
        var oneAntenna = new TagTrial(TagOf("T1"), new ToolId("T1"), 400, 400, Later) { IsInFullKit = true, Antenna = new AntennaPort(2) };
        Assert.Null(Qualify(oneAntenna).Worst);
        Assert.Contains("antenna 2 alone", Assert.Single(Qualify(oneAntenna).Figures).ToString(), StringComparison.Ordinal);
        Assert.Equal(TrialReasons.NotShown, Qualify(Tried("T1", 30, 28)).Reason.Kind);
    }

    [Fact]
    public void Trials_of_another_mounting_another_tool_or_a_later_day_show_nothing()
    {
        var before = new TagTrial(TagOf("T1"), new ToolId("T1"), 400, 400, Start.AddTicks(-1)) { IsInFullKit = true };
        var later = new TagTrial(TagOf("T1"), new ToolId("T1"), 400, 400, Later.AddTicks(1)) { IsInFullKit = true };
        var ofOther = new TagTrial(TagOf("T1"), new ToolId("T2"), 400, 400, Later) { IsInFullKit = true };

        Assert.Equal(TrialReasons.NotTried, Qualify(before, later, ofOther).Reason.Kind);
    }

    /// <summary>More presentations without a miss never show less, one more miss never shows more.</summary>
    [Property(MaxTest = 200)]
    public bool More_evidence_moves_the_limit_the_right_way(ushort first, ushort second)
    {
        int presented = 1 + (first % 1000), read = second % (presented + 1);
        decimal at = Qualify(Tried("T1", presented, read)).Worst!.ReadShareAtLeast;
        return Qualify(Tried("T1", presented + 1, read + 1)).Worst!.ReadShareAtLeast >= at && Qualify(Tried("T1", presented + 1, read)).Worst!.ReadShareAtLeast <= at;
    }

    [Fact]
    public void A_kit_names_its_weakest_tags_first_and_says_how_often_a_complete_one_reads_complete_and_on_what_assumption()
    {
        KitQualification kit = Kit(Tried("T1", 400, 400), Tried("T2", 60, 52), Tried("T3", 400, 398));

        Assert.Equal([2, 3, 1], kit.Lines.Select(line => line.Line.Number));
        Assert.Equal([2], kit.Weakest.Select(line => line.Line.Number));

        // Computed again in the plainest way: each limit at 1 - 0.05/3, so that all three hold together (Bonferroni); the sum bound is Boole's inequality and needs no independence.
        double[] low = [Beta.InvCDF(400, 1, 0.05 / 3), Beta.InvCDF(52, 9, 0.05 / 3), Beta.InvCDF(398, 3, 0.05 / 3)];
        Assert.Equal(1 - low.Sum(share => 1 - share), (double)kit.CompleteReadAtLeast!.Value, 3e-4);
        Assert.Equal(low[0] * low[1] * low[2], (double)kit.CompleteReadIfIndependent!.Value, 3e-4);
        Assert.True(kit.CompleteReadAtLeast <= kit.CompleteReadIfIndependent && kit.CompleteReadIfIndependent <= kit.CompleteReadAtMost);
        Assert.Equal(kit.Lines[0].Qualification.Worst!.ReadShareAtMost, kit.CompleteReadAtMost);
        Assert.Contains("if tags were missed independently of each other, which water, foil or a faulty antenna undo", kit.Reason.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_a_kit_with_a_tag_that_nobody_tried_nothing_is_said_and_that_tag_comes_first()
    {
        KitQualification kit = Kit(Tried("T1", 400, 400), Tried("T3", 400, 400, isInFullKit: false));

        Assert.Null(kit.CompleteReadAtLeast ?? kit.CompleteReadIfIndependent ?? kit.CompleteReadAtMost);
        Assert.Equal("nothing can be said of a complete kit: the tags of lines 2, 3 were not tried in the full kit", kit.Reason.ToString());
        Assert.Equal([2, 3, 1], kit.Lines.Select(line => line.Line.Number));
        Assert.Equal(TrialReasons.KitNoTags, KitQualification.Of(Manifest(), TagRegister.Empty, [], Later).Reason.Kind);
    }

    [Fact]
    public void The_better_of_two_tags_on_a_tool_counts()
    {
        TagBinding[] bindings = [Bind("T1"), Bind("T1", "second"), Bind("T2"), Bind("T3")];
        var second = new TagTrial(TagOf("second"), new ToolId("T1"), 400, 400, Later) { IsInFullKit = true };
        KitQualification kit = KitQualification.Of(Manifest(), new TagRegister(bindings), [Tried("T1", 60, 20), second, Tried("T2", 400, 400), Tried("T3", 400, 400)], Later);

        Assert.Empty(kit.Weakest);
        Assert.Equal(TagOf("second"), kit.Lines.Single(line => line.Line.Number == 1).Qualification.Binding.Tag);
    }

    /// <summary>Sixty presentations written down for a tag that sits on another tool, or for a slip of the pen, must not vanish: each trial that counts for nothing is named with why.</summary>
    [Fact]
    public void A_trial_of_a_tag_and_a_tool_that_are_not_bound_is_told()
    {
        var swapped = new TagTrial(TagOf("T2"), new ToolId("T1"), 60, 60, Later) { IsInFullKit = true };
        var slip = new TagTrial(TagOf("T3"), new ToolId("T-O3"), 60, 60, Later) { IsInFullKit = true };
        var before = new TagTrial(TagOf("T1"), new ToolId("T1"), 60, 60, Start.AddDays(-1)) { IsInFullKit = true };
        var later = new TagTrial(TagOf("T1"), new ToolId("T1"), 60, 60, Later.AddDays(1)) { IsInFullKit = true };
        var ofOtherKit = new TagTrial(TagOf("U1"), new ToolId("U1"), 60, 60, Start.AddDays(-1)) { IsInFullKit = true };
        var tags = new TagRegister([Bind("T1"), Bind("T2"), Bind("T3"), Bind("U1")]);
        KitQualification kit = KitQualification.Of(Manifest(), tags, [swapped, Tried("T1", 400, 400), slip, before, later, ofOtherKit], Later);

        Assert.Equal([(swapped, "trial.not-bound"), (slip, "trial.not-bound"), (before, "trial.before-binding"), (later, "trial.after-as-of")], kit.Unused.Select(static one => (one.Trial, one.Reason.Code)));
        Assert.Contains("is not bound to tool T-O3 at 2026-03-10T00:00:00Z", kit.Unused[1].Reason.ToString(), StringComparison.Ordinal);
        Assert.Empty(Kit(Tried("T1", 400, 400)).Unused);
    }

    [Fact]
    public void What_is_no_trial_is_refused()
    {
        Assert.Throws<ArgumentException>(() => new TagTrial(default, new ToolId("T1"), 1, 1, Start));
        Assert.Throws<ArgumentException>(() => new TagTrial(TagOf("T1"), default, 1, 1, Start));
        Assert.Throws<ArgumentOutOfRangeException>(() => new TagTrial(TagOf("T1"), new ToolId("T1"), 0, 0, Start));
        Assert.Throws<ArgumentOutOfRangeException>(() => new TagTrial(TagOf("T1"), new ToolId("T1"), 1_000_001, 1, Start));
        Assert.Throws<ArgumentOutOfRangeException>(() => new TagTrial(TagOf("T1"), new ToolId("T1"), 3, 4, Start));
        Assert.Throws<ArgumentOutOfRangeException>(() => new TagTrial(TagOf("T1"), new ToolId("T1"), 3, -1, Start));
        Assert.Throws<ArgumentOutOfRangeException>(() => TagQualification.PresentationsNeeded(1));
        Assert.Throws<ArgumentOutOfRangeException>(() => TagQualification.Of(Bind("T1"), [], Start, shareNeeded: 0.4m));
    }

    private static TagQualification Qualify(params TagTrial[] trials) => TagQualification.Of(Bind("T1"), trials, Later);

    private static KitQualification Kit(params TagTrial[] trials) => KitQualification.Of(Manifest(), new TagRegister([Bind("T1"), Bind("T2"), Bind("T3")]), trials, Later);

    private static KitManifest Manifest() => new(new KitId("K1"), 1, "invented kit", Start, new Signature { By = new PersonId("S"), At = Start },
    [
        .. Enumerable.Range(1, 3).Select(number => (ManifestLine)new ToolLine { Number = number, Tool = new Tool { Id = new ToolId("T" + number), Description = "tool" } }),
        new CountedLine { Number = 4, Description = "rags", Quantity = new Quantity(6, Unit.Each) },
    ]);

    private static TagTrial Tried(string tool, int presented, int read, string? setting = null, bool isInFullKit = true) =>
        new(TagOf(tool), new ToolId(tool), presented, read, Later) { IsInFullKit = isInFullKit, Setting = setting };

    private static TagBinding Bind(string tool, string? tag = null) => new() { Tag = TagOf(tag ?? tool), Tool = new ToolId(tool), From = Start };

    private static TagId TagOf(string name) => TagId.FromText("tag " + name);
}
