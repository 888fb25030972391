using System;
using System.Linq;
using FsCheck.Xunit;
using ToolLedger.Identifiers;
using ToolLedger.Reads;
using Xunit;

namespace ToolLedger.Tests.Reads;

/// <summary>The small values of this room: ports, strengths, reads, policies, stations.</summary>
public sealed class ReadValueTests
{
    [Property]
    public void Rssi_from_dbm_is_the_nearest_hundredth(short centiDbm) => Assert.Equal(centiDbm, Rssi.FromDbm(centiDbm / 100.0).CentiDbm);

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(327.68)]
    [InlineData(-327.69)]
    public void Rssi_refuses_what_is_no_strength(double dbm) => Assert.Throws<ArgumentOutOfRangeException>(() => Rssi.FromDbm(dbm));

    [Property]
    public void Ports_and_strengths_are_ordered_by_their_numbers(byte left, byte right)
    {
        AntennaPort a = left == 0 ? default : new AntennaPort(left);
        AntennaPort b = right == 0 ? default : new AntennaPort(right);
        Assert.Equal(((left < right), (left > right), left <= right, left >= right, left == right), ((a < b), (a > b), a <= b, a >= b, a == b));
        var c = new Rssi(left);
        var d = new Rssi(right);
        Assert.Equal(((left < right), (left > right), left <= right, left >= right, left == right), ((c < d), (c > d), c <= d, c >= d, c == d));
    }

    [Fact]
    public void The_default_antenna_is_not_known()
    {
        Assert.False(default(AntennaPort).IsKnown);
        Assert.Equal("not known", default(AntennaPort).ToString());
        Assert.Throws<ArgumentOutOfRangeException>(() => new AntennaPort(0));
    }

    [Fact]
    public void A_read_keeps_its_instants_in_utc_and_refuses_to_end_before_it_begins()
    {
        var read = new TagRead(SessionScene.Tool(1), default, SessionScene.Start.ToOffset(TimeSpan.FromHours(9)));
        Assert.Equal((SessionScene.Start, TimeSpan.Zero), (read.FirstSeen, read.FirstSeen.Offset));
        Assert.Equal(read.FirstSeen, read.LastSeen);
        Assert.Throws<ArgumentOutOfRangeException>(() => read with { LastSeen = SessionScene.At(-1) });
        Assert.Throws<ArgumentOutOfRangeException>(() => read with { Count = 0 });
        Assert.Null((read with { Count = 3, Strength = new Rssi(-1), ReportId = 0 } with { Count = null, Strength = null, ReportId = null }).Count);
        Assert.Equal(read, read with { Count = 3, Strength = new Rssi(-1), ReportId = 7 } with { Count = null, Strength = null, ReportId = null });
        Assert.NotEqual(read, read with { ReportId = 0 });
        Assert.NotEqual(read, read with { Tid = Tid.Parse("E2") });
    }

    [Fact]
    public void A_station_has_different_known_antennas()
    {
        AntennaPort[] many = [.. Enumerable.Range(1, 65).Select(port => new AntennaPort((byte)port))];
        foreach (AntennaPort[] bad in (AntennaPort[][])[[], many, [default], [new(1), new(1)]])
        {
            Assert.Throws<ArgumentException>(() => new ReadStation { Id = new StationId("R1"), Antennas = bad });
        }

        Assert.Throws<ArgumentException>(() => new ReadStation { Id = default, Antennas = [new(1)] });
        Assert.Throws<ArgumentException>(() => new ReadStation { Id = new StationId("R1"), Antennas = [new(1)], ControlTags = [default] });
        Assert.Equal([new AntennaPort(1), new AntennaPort(2)], new ReadStation { Id = new StationId("R1"), Antennas = [new(2), new(1)] }.Antennas);
    }

    [Fact]
    public void A_policy_refuses_values_out_of_range_and_has_the_defaults_of_p0()
    {
        var policy = new SessionPolicy();
        Assert.Equal((5.0, 20.0, 2.0, 0.5), (policy.ControlTagEdge.TotalSeconds, policy.MinimumWindow.TotalSeconds, policy.ClockOffsetMax.TotalSeconds, policy.SlotLength.TotalSeconds));
        Assert.Equal((60.0, 65_536), (policy.RepeatHorizon.TotalSeconds, policy.RepeatReportCount));
        Assert.Throws<ArgumentOutOfRangeException>(() => policy with { SlotLength = TimeSpan.Zero });
        Assert.Throws<ArgumentOutOfRangeException>(() => policy with { LooksKept = 0 });
        Assert.Throws<ArgumentOutOfRangeException>(() => policy with { TagLimit = 4_000_001 });
        Assert.Throws<ArgumentOutOfRangeException>(() => policy with { ControlTagEdge = TimeSpan.FromDays(1) });
        Assert.Equal(policy, policy with { LooksKept = 128 });
    }

    [Fact]
    public void Reason_codes_are_different_and_belong_to_their_class()
    {
        Assert.All(SessionReasons.All, kind => Assert.StartsWith("session.", kind.Code, StringComparison.Ordinal));
        Assert.All(PresentationRules.All, kind => Assert.StartsWith("presentation.", kind.Code, StringComparison.Ordinal));
        Assert.Equal(SessionReasons.All.Count, SessionReasons.All.Select(kind => kind.Code).Distinct(StringComparer.Ordinal).Count());
        Assert.Equal(typeof(SessionReasons).GetProperties().Length - 1, SessionReasons.All.Count);
        Assert.Equal(typeof(PresentationRules).GetProperties().Length - 1, PresentationRules.All.Count);
        Assert.Equal(typeof(ToolLedger.Interchange.ReadFileRules).GetProperties().Length - 1, ToolLedger.Interchange.ReadFileRules.All.Count);
    }
}
