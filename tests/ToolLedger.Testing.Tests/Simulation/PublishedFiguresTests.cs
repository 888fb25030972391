using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Reads;
using ToolLedger.Testing.Simulation;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Testing.Tests.Simulation;

/// <summary>The defaults give what the published reads gave: fixed seeds, many tags, bounds of about four standard errors.</summary>
public sealed class PublishedFiguresTests
{
    private const int TagCount = 20_000;

    // 20 kits of 1000 tools, all presented, three passes.
    private static readonly SimulatedSite Site = Scenes.Site(kits: 20, tools: 1000);

    private static readonly SimulatedSession ThreePasses =
        new SessionSimulator(20260302, Scenes.PlainDelivery).Run(Scenes.Presenting(Site, presented: 20, passes: 3));

    [Fact]
    public void A_tag_is_reported_4_9_times_a_pass_on_average()
    {
        double mean = ThreePasses.Truth.Where(truth => truth.Placement == TagPlacement.Present).Average(truth => truth.ReportCount / 3.0);

        Assert.InRange(mean, 4.8, 5.0);
    }

    [Fact]
    public void In_one_pass_5_5_percent_of_the_tags_are_never_read_and_about_a_tenth_exactly_once()
    {
        int[] counts = CountsInPass(1);

        Assert.InRange(counts.Count(count => count == 0) / (double)TagCount, 0.048, 0.062);
        Assert.InRange(counts.Count(count => count == 1) / (double)TagCount, 0.093, 0.112);
    }

    [Fact]
    public void A_tag_missed_once_is_missed_again_more_often_than_any_tag()
    {
        int[] first = CountsInPass(1);
        int[] second = CountsInPass(2);
        int missed = first.Count(count => count == 0);
        double missedAgain = first.Zip(second).Count(pair => pair is (0, 0)) / (double)missed;

        Assert.InRange(missedAgain, 0.055, 0.125);
        Assert.InRange(second.Count(count => count == 0) / (double)TagCount, 0.048, 0.062);
    }

    [Fact]
    public void Three_passes_leave_about_one_tag_in_two_thousand_unseen()
    {
        int unseen = ThreePasses.Truth.Count(truth => truth.Placement == TagPlacement.Present && truth.ReportCount == 0);

        Assert.InRange(unseen, 1, 25); // 10 expected
    }

    [Fact]
    public void Strength_and_number_of_reads_hardly_separate_neighbours()
    {
        SimulatedSession session = new SessionSimulator(5, Scenes.PlainDelivery).Run(Scenes.Presenting(Scenes.Site(kits: 4, tools: 1000), presented: 2));
        ILookup<TagId, TagRead> reads = session.Reads.ToLookup(read => read.Tag);
        TagTruth[] read = [.. session.Truth.Where(truth => truth.ReportCount > 0)];
        TagTruth[] own = [.. read.Where(truth => truth.Placement == TagPlacement.Present)];
        TagTruth[] neighbours = [.. read.Where(truth => truth.Placement == TagPlacement.Neighbour)];

        Assert.InRange(AreaUnderCurve(own, neighbours, truth => reads[truth.Tag].Max(one => (double)one.Strength!.Value.CentiDbm)), 0.59, 0.70);
        Assert.InRange(AreaUnderCurve(own, neighbours, truth => truth.ReportCount), 0.60, 0.68);
    }

    [Fact]
    public void The_control_tag_misses_9_5_percent_of_its_slots()
    {
        TagTruth control = ThreePasses.Truth.Single(truth => truth.Placement == TagPlacement.Control);

        Assert.InRange(control.ReportCount, 360 * 0.85, 360 * 0.96); // 180 s, two antennas, one attempt a second
    }

    [Fact]
    public void Between_12_and_29_percent_of_neighbouring_reports_step_back_by_up_to_0_18_seconds()
    {
        SimulatedSession session = new SessionSimulator(8).Run(Scenes.Presenting(Scenes.Site(kits: 1, tools: 500, antennas: 4)));
        TimeSpan[] steps = [.. session.Reads.Zip(session.Reads.Skip(1), (one, next) => next.FirstSeen - one.FirstSeen)];
        var settings = new SimulationSettings { RepeatShare = 0 };
        IReadOnlyList<TagRead> unrepeated = new SessionSimulator(8, settings).Run(session.Scenario).Reads;
        TimeSpan[] unrepeatedSteps = [.. unrepeated.Zip(unrepeated.Skip(1), (one, next) => next.FirstSeen - one.FirstSeen)];

        Assert.InRange(steps.Count(step => step < TimeSpan.Zero) / (double)steps.Length, 0.12, 0.29);
        Assert.InRange(unrepeatedSteps.Min(), TimeSpan.FromSeconds(-0.19), TimeSpan.FromSeconds(-0.08));
    }

    [Fact]
    public void Foreign_tags_come_in_about_8_of_402_sessions_one_to_five_at_a_time()
    {
        SimulatedSite site = Scenes.Site(kits: 1, tools: 1);
        int[] counts = [.. Enumerable.Range(0, 2000)
            .Select(seed => new SessionSimulator((ulong)seed).Run(Scenes.Presenting(site)).Truth.Count(truth => truth.Placement == TagPlacement.Stray))];

        Assert.InRange(counts.Count(count => count > 0), 15, 70); // 40 expected
        Assert.Equal([1, 2, 3, 4, 5], counts.Where(count => count > 0).Distinct().Order());
    }

    private static int[] CountsInPass(int pass)
    {
        DateTimeOffset from = Scenes.Start.AddSeconds(60 * (pass - 1));
        Dictionary<TagId, int> counts = ThreePasses.Reads
            .Where(read => read.FirstSeen >= from && read.FirstSeen < from.AddSeconds(60))
            .GroupBy(read => read.Tag)
            .ToDictionary(group => group.Key, group => group.Count());
        return [.. ThreePasses.Truth.Where(truth => truth.Placement == TagPlacement.Present).Select(truth => counts.GetValueOrDefault(truth.Tag))];
    }

    /// <summary>The chance that one of the first group has a higher value than one of the second, ties counted half.</summary>
    private static double AreaUnderCurve(TagTruth[] first, TagTruth[] second, Func<TagTruth, double> value)
    {
        double[] ones = [.. first.Select(value)];
        double[] others = [.. second.Select(value)];
        double wins = ones.Sum(one => others.Sum(other => one > other ? 1.0 : one == other ? 0.5 : 0.0));
        return wins / ((double)ones.Length * others.Length);
    }
}
