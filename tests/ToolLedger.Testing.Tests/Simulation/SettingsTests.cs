using System;
using System.Linq;
using System.Reflection;
using FsCheck.Xunit;
using ToolLedger.Reads;
using ToolLedger.Testing.Simulation;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Testing.Tests.Simulation;

/// <summary>Each setting has the effect it claims, and refuses what is outside its range.</summary>
public sealed class SettingsTests
{
    private static readonly SimulatedSite Site = Scenes.Site(kits: 2, tools: 200);

    [Fact]
    public void An_obscured_tag_is_reported_less_and_weaker()
    {
        var settings = new SimulationSettings { LateReportShare = 0, RepeatShare = 0, StraySessionShare = 0, ObscuredFactor = 0.3, ObscuredLossDb = 15 };
        ToolId[] hidden = [.. Site.Kits[0].Lines.Take(100).Select(line => line.Tool!.Id)];
        SimulatedSession session = new SessionSimulator(11, settings).Run(Scenes.Presenting(Site, obscured: hidden));
        ILookup<bool, TagTruth> byObscured = session.Truth.Where(truth => truth.Placement == TagPlacement.Present).ToLookup(truth => truth.IsObscured);
        double Strength(bool isObscured) => session.Reads
            .Where(read => session.Find(read.Tag) is { Placement: TagPlacement.Present } truth && truth.IsObscured == isObscured)
            .Average(read => read.Strength!.Value.ToDbm());

        Assert.Equal(100, byObscured[true].Count());
        Assert.InRange(byObscured[true].Average(truth => truth.ReportCount) / byObscured[false].Average(truth => truth.ReportCount), 0.2, 0.4);
        Assert.InRange(Strength(false) - Strength(true), 13, 17);
    }

    [Fact]
    public void The_obscured_share_hides_that_share_of_the_tags()
    {
        var settings = new SimulationSettings { ObscuredShare = 0.25 };
        SimulatedSession session = new SessionSimulator(12, settings).Run(Scenes.Presenting(Scenes.Site(kits: 4, tools: 500), presented: 4));

        Assert.InRange(session.Truth.Count(truth => truth.IsObscured), 420, 580); // 500 of 2000 expected
    }

    [Fact]
    public void A_tag_only_one_antenna_sees_is_read_on_one_antenna()
    {
        var settings = new SimulationSettings { OneAntennaShare = 1, ReportsPerPassMean = 50 };
        SimulatedSession session = new SessionSimulator(13, settings).Run(Scenes.Presenting(Site));

        Assert.All(
            session.Reads.Where(read => session.Find(read.Tag)!.Placement == TagPlacement.Present).GroupBy(read => read.Tag),
            group => Assert.Single(group.Select(read => read.Antenna).Distinct()));
    }

    [Fact]
    public void Antennas_read_in_the_ratio_of_their_weights()
    {
        AntennaPort first = Site.Station.Antennas[0];
        AntennaPort second = Site.Station.Antennas[1];
        SimulatedSession session = new SessionSimulator(14, Scenes.PlainDelivery).Run(Scenes.Presenting(Site, coverage: [new(first, 3), new(second, 1)]));
        TagRead[] reads = [.. session.Reads.Where(read => session.Find(read.Tag)!.Placement == TagPlacement.Present)];

        Assert.InRange(reads.Count(read => read.Antenna == first) / (double)reads.Length, 0.68, 0.82);
    }

    [Fact]
    public void A_deaf_antenna_hears_only_the_control_tag()
    {
        AntennaPort deaf = Site.Station.Antennas[1];
        SimulatedSession session = new SessionSimulator(15).Run(Scenes.Presenting(Site, strays: 5, coverage: [new(deaf, 0)]));

        Assert.All(session.Reads.Where(read => read.Antenna == deaf), read => Assert.Equal(TagPlacement.Control, session.Find(read.Tag)!.Placement));
    }

    [Property(MaxTest = 30)]
    public void A_drop_out_takes_out_exactly_the_reads_it_covers(ulong seed)
    {
        var silence = new ReaderDropOut(Scenes.Start.AddSeconds(10), Scenes.Start.AddSeconds(30));
        var oneAntenna = new ReaderDropOut(Scenes.Start.AddSeconds(40), Scenes.Start.AddSeconds(50), Site.Station.Antennas[0]);
        var simulator = new SessionSimulator(seed);
        SimulatedSession with = simulator.Run(Scenes.Presenting(Site, dropOuts: [silence, oneAntenna]));
        SimulatedSession without = simulator.Run(Scenes.Presenting(Site));
        bool IsHeard(TagRead read) => !(read.FirstSeen >= silence.From && read.FirstSeen < silence.To)
            && !(read.Antenna == oneAntenna.Antenna && read.FirstSeen >= oneAntenna.From && read.FirstSeen < oneAntenna.To);

        Assert.Equal(without.Reads.Where(IsHeard), with.Reads);
        Assert.True(with.Reads.Count < without.Reads.Count);
    }

    [Fact]
    public void A_drop_out_the_host_is_told_of_stands_on_the_sheet_and_makes_the_session_doubtful()
    {
        var told = new ReaderDropOut(Scenes.Start.AddSeconds(20), Scenes.Start.AddSeconds(21), Site.Station.Antennas[1], IsReported: true);
        SimulatedSession session = new SessionSimulator(19).Run(Scenes.Presenting(Site, dropOuts: [told]));

        Assert.Equal(new ReportedLoss(SessionLoss.AntennaDisconnected, told.From, told.Antenna), Assert.Single(session.Presentation.Losses));
        Assert.Equal(SessionState.Degraded, session.Close(new SessionPolicy()).Health.State);
    }

    [Fact]
    public void Repeats_are_exact_and_as_many_as_asked_for()
    {
        var settings = new SimulationSettings { RepeatShare = 0.5, LateReportShare = 0 };
        SimulatedSession session = new SessionSimulator(16, settings).Run(Scenes.Presenting(Site));
        int distinct = session.Reads.Distinct().Count();

        Assert.Equal(session.Truth.Sum(truth => truth.ReportCount), distinct);
        Assert.InRange((session.Reads.Count - distinct) / (double)distinct, 0.44, 0.56);
    }

    [Property(MaxTest = 20)]
    public void Without_late_reports_and_repeats_the_reads_come_in_time_order(ulong seed)
    {
        SimulatedSession session = new SessionSimulator(seed, Scenes.PlainDelivery).Run(Scenes.Presenting(Site, strays: 2));

        Assert.Equal(session.Reads.OrderBy(read => read.FirstSeen).Select(read => read.FirstSeen), session.Reads.Select(read => read.FirstSeen));
    }

    [Property(MaxTest = 20)]
    public void Late_reports_and_repeats_change_the_order_and_never_the_set(ulong seed)
    {
        SimulatedSession plain = new SessionSimulator(seed, Scenes.PlainDelivery).Run(Scenes.Presenting(Site));
        var settings = new SimulationSettings { LateReportShare = 0.5, RepeatShare = 0.5, StraySessionShare = 0 };
        SimulatedSession shuffled = new SessionSimulator(seed, settings).Run(Scenes.Presenting(Site));

        Assert.Equal(plain.Reads.ToHashSet(), shuffled.Reads.ToHashSet());
        Assert.NotEqual(plain.Reads.Select(read => read.FirstSeen), shuffled.Reads.Distinct().Select(read => read.FirstSeen));
    }

    [Property(MaxTest = 20)]
    public void A_clock_that_is_ahead_stamps_every_read_that_much_later(ulong seed)
    {
        TimeSpan offset = TimeSpan.FromMinutes(7);
        SimulatedSession right = new SessionSimulator(seed).Run(Scenes.Presenting(Site));
        SimulatedSession ahead = new SessionSimulator(seed).Run(Scenes.Presenting(Site, clockOffset: offset));

        Assert.Equal(right.Reads.Select(read => read.FirstSeen + offset), ahead.Reads.Select(read => read.FirstSeen));
        Assert.Equal(offset, ahead.Presentation.ReaderClockOffset);
        Assert.Equal(offset, ahead.ReaderClockOffsetAfter);
    }

    [Fact]
    public void A_clock_that_drifts_is_further_ahead_at_the_end_and_makes_the_session_invalid()
    {
        SimulatedSession session = new SessionSimulator(17).Run(Scenes.Presenting(Site, clockDrift: TimeSpan.FromSeconds(9)));

        Assert.Equal(TimeSpan.Zero, session.Presentation.ReaderClockOffset);
        Assert.Equal(TimeSpan.FromSeconds(9), session.ReaderClockOffsetAfter);
        Assert.Equal(SessionState.Invalid, session.Close(new SessionPolicy()).Health.State);
    }

    [Fact]
    public void A_clock_nobody_measured_is_stated_nowhere()
    {
        SimulatedSession session = new SessionSimulator(18).Run(Scenes.Presenting(Site, isClockKnown: false));

        Assert.Null(session.Presentation.ReaderClockOffset);
        Assert.Null(session.ReaderClockOffsetAfter);
    }

    [Theory]
    [InlineData(nameof(SimulationSettings.ObscuredFactor), 1.01)]
    [InlineData(nameof(SimulationSettings.ObscuredShare), -0.01)]
    [InlineData(nameof(SimulationSettings.RepeatShare), double.NaN)]
    [InlineData(nameof(SimulationSettings.ReportsPerPassMean), -1.0)]
    [InlineData(nameof(SimulationSettings.StrengthMeanDbm), 1.0)]
    public void A_setting_outside_its_range_is_refused_by_name(string name, double value)
    {
        PropertyInfo property = typeof(SimulationSettings).GetProperty(name)!;

        var error = Assert.IsType<ArgumentOutOfRangeException>(
            Assert.Throws<TargetInvocationException>(() => property.SetValue(new SimulationSettings(), value)).InnerException);
        Assert.Equal(name, error.ParamName);
    }

    [Fact]
    public void A_site_of_no_kit_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SimulatedSite.Create(0, 1, Scenes.Start));
}
