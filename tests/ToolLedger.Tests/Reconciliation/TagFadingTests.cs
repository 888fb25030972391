using System;
using System.Collections.Generic;
using System.Linq;
using FsCheck.Xunit;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Tests.Statistics;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>Tags that stay silent more often than usual are told before they fail; no line moves for it. The kit is invented, the run lengths are those of the shared vectors.</summary>
public sealed class TagFadingTests
{
    private static readonly VectorFile Vectors = new("tests", "ToolLedger.Tests", "Statistics", "Data", "statistics.json");
    private static readonly TagHistoryRegister Nothing = TagHistoryRegister.Empty(World.Start.AddYears(-1));

    // The steps and the limit of the default are those whose exact mean run lengths the vectors give: 954.64 sessions at a miss rate of 0.05, 43.15 at 0.15.
    [Fact]
    public void The_default_watch_has_the_run_lengths_that_its_documents_state()
    {
        TagFadingWatch watch = new FindingPolicy().FadingWatch;
        var vectors = Vectors.Of("bernoulli_cusum_anos").Where(vector => VectorFile.Number(vector, "m") - 1 == watch.Up && VectorFile.Number(vector, "h_units") == watch.Limit).ToList();

        Assert.Equal([0.05, 0.15], vectors.Select(static vector => VectorFile.Number(vector, "p_miss")).Order());
        Assert.All(vectors, vector => VectorFile.Close(vector, watch.MeanPassesToSignal(VectorFile.Number(vector, "p_miss"))));
        Assert.Equal((954.64, 43.15), (Math.Round(watch.MeanPassesToSignal(0.05), 2), Math.Round(watch.MeanPassesToSignal(0.15), 2)));
    }

    [Fact]
    public void A_tag_is_told_once_its_sum_reaches_the_limit_and_no_line_moves_for_it()
    {
        ReconciliationResult before = Day(32).Reconcile(), at = Day(33).Reconcile();

        Assert.DoesNotContain(before.Findings, static finding => finding.Reason.Kind == RiskReasons.TagFading);
        Finding finding = Assert.Single(at.Findings, static finding => finding.Reason.Kind == RiskReasons.TagFading);
        Assert.Equal((FindingLevel.Line, "5", World.TagOf("T5")), (finding.Level, finding.LineLabels[0], finding.Tags[0]));
        Assert.Contains("silent in 4 of 60 past sessions", finding.ToString(), StringComparison.Ordinal);
        Assert.Contains("qualify the tag again", finding.ToString(), StringComparison.Ordinal);
        Assert.Equal(before.Lines.Select(Text), at.Lines.Select(Text));
        Assert.Equal((KitState.Complete, before.Kit.ToString()), (at.Kit.State, at.Kit.ToString()));
        Assert.NotEqual(before.Inputs.Single(static input => input.Name == "hints").Digest, at.Inputs.Single(static input => input.Name == "hints").Digest);
    }

    [Fact]
    public void Four_silent_shifts_of_five_make_a_tag_fading_and_one_good_day_does_not_mend_it()
    {
        TagHistoryRegister history = Nothing;
        var sums = new List<int>();
        foreach (bool isRead in (bool[])[false, false, true, false, false, true])
        {
            history = Learn(history, sums.Count, isRead);
            sums.Add(history.Entries.Single(static entry => entry.Tag == World.TagOf("T5")).FadingSum);
        }

        // 10 up, 1 down, never below 0, and kept once at the limit of 33.
        Assert.Equal([10, 20, 19, 29, 33, 33], sums);
        Assert.All(history.Entries.Where(static entry => entry.Tag != World.TagOf("T5")), static entry => Assert.Equal(0, entry.FadingSum));
        Assert.Equal(33, TagHistoryRegister.Parse(history.ToJson()).Histories[World.TagOf("T5")].FadingSum);
        Reports.StoredSchema.AssertAccepts("tag-history", history.ToJson());

        // Qualified again, it begins anew.
        TagHistoryRegister anew = history.Without([World.TagOf("T5")]);
        Assert.Equal((history.Entries.Count - 1, history.AsOf), (anew.Entries.Count, anew.AsOf));
        Assert.Equal(0, Learn(anew, 6, isRead: true).Histories[World.TagOf("T5")].FadingSum);
    }

    [Property(MaxTest = 200)]
    public void The_kept_sum_is_that_of_the_watch_until_it_calls(bool[] reads, byte steps, byte limit)
    {
        var watch = new TagFadingWatch(steps + 1, limit + 1);
        int kept = 0, sum = 0;
        foreach (bool isRead in reads)
        {
            kept = kept >= watch.Limit ? kept : watch.Next(kept, isRead);
            sum = isRead ? Math.Max(0, sum - 1) : sum + watch.Up;
            if (sum >= watch.Limit)
            {
                Assert.True(watch.IsFading(kept));
                return;
            }

            Assert.Equal(sum, kept);
        }
    }

    [Fact]
    public void Sums_out_of_range_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(static () => new TagHistory(1, 1) { FadingSum = 1001 });
        Assert.Throws<ArgumentOutOfRangeException>(static () => new TagHistoryEntry(World.C1, new ToolId("T1"), 1, 1, 0, 0) { FadingSum = -1 });
        Assert.Throws<ArgumentOutOfRangeException>(static () => new FindingPolicy { FadingLimit = 0 });
        Assert.False(TagHistoryRegister.TryParse("""{"schema":"toolledger/tag-history/1","asOf":"2026-03-02T00:00:00Z","tags":[{"tag":"epc:30","tool":"T1","presented":2,"read":1,"fadingSum":1001}]}"""u8, out _, out var issues));
        Assert.Equal("$.tags[0].fadingSum", Assert.Single(issues).Place);
    }

    // Silence is known in the last session of a shift only: by one step a shift the run lengths of the documents hold however often a bag is read, and the share of sessions read is that of the tag.
    [Theory]
    [InlineData(false, false, 20)]
    [InlineData(true, false, 20)]
    [InlineData(false, true, 9)]
    [InlineData(true, true, 9)]
    public void A_shift_of_two_sessions_is_one_step_by_the_last(bool isReadFirst, bool isReadLast, int sum)
    {
        TagHistoryRegister before = Learn(Nothing, -1, isRead: false);
        Assert.Equal(10, before.Histories[World.TagOf("T5")].FadingSum);
        World world = new World { AsOf = World.End.AddMinutes(14) }.ReadAllBut().CountAll();
        ReadSession first = world.Session("S1", [World.K1], World.Later(world, 0, read => isReadFirst || read.Tag != World.TagOf("T5")));
        ReadSession last = world.Session("S2", [World.K1], World.Later(world, 10, read => isReadLast || read.Tag != World.TagOf("T5")), World.Start.AddMinutes(10));
        world.Sight("T5", "K1-5", World.K1, last.To.AddMinutes(1));
        ReconciliationResult result = world.Reconcile(first, last);
        Assert.True(result.Lines[4].IsAccounted);

        TagHistory learned = TagHistoryLearner.Learn(before, [result], new TagRegister(world.Bindings), world.AsOf).Histories[World.TagOf("T5")];

        Assert.Equal(sum, learned.FadingSum);
        Assert.Equal((2, isReadLast ? 1 : 0), (learned.SessionsPresented, learned.SessionsRead));
    }

    // A tag that answers in every second session, whichever of a shift it is: all four ways two sessions can go, once each. Reads of every session with silences of the last would make it 4 of 6, and too good to be qualified again.
    [Fact]
    public void A_tag_read_in_half_of_the_sessions_has_a_share_of_a_half_however_many_a_shift_has()
    {
        TagHistoryRegister learned = Nothing;
        foreach ((int day, bool isReadFirst, bool isReadLast) in new[] { (0, true, true), (1, true, false), (2, false, true), (3, false, false) })
        {
            World world = new World { AsOf = World.End.AddDays(day).AddMinutes(14) }.ReadAllBut();
            int minutes = day * 24 * 60;
            ReadSession first = world.Session("S1", [World.K1], World.Later(world, minutes, read => isReadFirst || read.Tag != World.TagOf("T5")), World.Start.AddMinutes(minutes));
            ReadSession last = world.Session("S2", [World.K1], World.Later(world, minutes + 10, read => isReadLast || read.Tag != World.TagOf("T5")), World.Start.AddMinutes(minutes + 10));
            world.Sight("T5", "K1-5", World.K1, last.To.AddMinutes(1));
            world.Count(13, 10, "each", last.To).Count(14, 1, "spool", last.To).Count(15, 6, "each", last.To);
            learned = TagHistoryLearner.Learn(learned, [world.Reconcile(first, last)], new TagRegister(world.Bindings), world.AsOf);
        }

        TagHistory history = learned.Histories[World.TagOf("T5")];
        Assert.Equal((4, 2), (history.SessionsPresented, history.SessionsRead));
    }

    private static string Text(LineConclusion line) => $"{line} {line.Basis} {string.Join(' ', line.Reasons)} {line.Next}";

    private static World Day(int fadingSum)
    {
        World world = new World().ReadAllBut().CountAll();
        world.History[World.TagOf("T5")] = new TagHistory(60, 56) { FadingSum = fadingSum };
        return world;
    }

    /// <summary>A shift after which T5 is sighted, read or not.</summary>
    private static TagHistoryRegister Learn(TagHistoryRegister before, int day, bool isRead)
    {
        World world = isRead ? new World().ReadAllBut() : new World().ReadAllBut("T5");
        DateTimeOffset from = World.Start.AddDays(day);
        ReadSession session = world.Session($"S{day}", [World.K1], world.ControlReads().Concat(world.Reads)
            .Select(read => new TagRead(read.Tag, read.Antenna, read.FirstSeen.AddDays(day)) { Strength = read.Strength }), from);
        world.Sight("T5", "K1-5", World.K1, session.To.AddMinutes(1));
        world.Count(13, 10, "each", session.To).Count(14, 1, "spool", session.To).Count(15, 6, "each", session.To);
        world.AsOf = session.To.AddMinutes(2);
        return TagHistoryLearner.Learn(before, [world.Reconcile(session)], new TagRegister(world.Bindings), world.AsOf);
    }
}
