using System;
using System.Linq;
using FsCheck.Xunit;
using ToolLedger.Reads;
using Xunit;

namespace ToolLedger.Tests.Reads;

/// <summary>A session keeps the slot of a look and not its instant; a silence between looks is measured on the safe side of both slots.</summary>
public sealed class SilenceTests
{
    // The true silences are known here to the tick. One that is longer than the limit is always told, wherever it stands in its slots; one that is told is at most two slots shorter.
    [Property(MaxTest = 3000)]
    public void No_silence_longer_than_the_limit_passes_and_none_much_shorter_is_told(byte slot, ushort limit, byte[]? steps, uint fraction)
    {
        var slotLength = TimeSpan.FromSeconds(0.1 * (1 + (slot % 20)));
        var gap = TimeSpan.FromSeconds(Math.Max(1, 2 * slotLength.TotalSeconds) + (limit % 1000 / 100.0));
        var scene = new SessionScene { Policy = new SessionPolicy { SlotLength = slotLength, SilenceGapMax = gap, ControlTagEdge = TimeSpan.FromHours(1) } }.WithControl(1, 0, 59);
        double[] times = TimesOf(steps ?? [], slotLength.TotalSeconds, gap.TotalSeconds, fraction);
        scene.With(SessionScene.C1, 2, times);

        SessionHealth health = scene.Close().Health;
        bool isTold = health.Reasons.Any(static reason => reason.Kind == SessionReasons.SilenceGap && reason.Values[0].Value == "2");
        long[] edges = [0, .. times.Select(static time => SessionScene.At(time).Ticks - SessionScene.Start.Ticks), SessionScene.At(60).Ticks - SessionScene.Start.Ticks];
        long longest = edges.Zip(edges.Skip(1), static (from, to) => to - from).Max();

        Assert.True(isTold || longest <= gap.Ticks, $"A silence of {TimeSpan.FromTicks(longest)} passed with a limit of {gap} and slots of {slotLength}.");
        Assert.True(!isTold || longest > gap.Ticks - (2 * slotLength.Ticks), $"A silence of {TimeSpan.FromTicks(longest)} was told with a limit of {gap} and slots of {slotLength}.");
    }

    // Given a limit of 10.1 s and slots of half a second, when a look stands at the start of its slot and the next at the end of its own, 10.9 s later, then the silence is told.
    [Theory]
    [InlineData(10.0, 20.9, true)]
    [InlineData(10.0, 20.2, true)]
    [InlineData(10.4, 19.9, false)]
    [InlineData(10.4, 20.1, true)]
    public void A_silence_that_hides_in_the_slots_at_its_ends_is_told(double last, double next, bool isTold)
    {
        var scene = new SessionScene { Policy = new SessionPolicy { SilenceGapMax = TimeSpan.FromSeconds(10.1) } }.WithControl(1).WithControl(2, 1, 9);
        scene.With(SessionScene.C1, 2, last, next).WithControl(2, next, 59);

        Assert.Equal(isTold, scene.Close().Health.Reasons.Any(static reason => reason.Kind == SessionReasons.SilenceGap));
    }

    [Fact]
    public void Looks_in_neighbouring_slots_are_no_silence_even_where_the_limit_is_shorter_than_a_slot()
    {
        var scene = new SessionScene { Policy = new SessionPolicy { SilenceGapMax = TimeSpan.FromSeconds(1), SlotLength = TimeSpan.FromSeconds(2) } }.WithControls();

        Assert.Equal(SessionState.Valid, scene.Close().Health.State);
    }

    /// <summary>Times in a minute whose distances gather where the answer turns: a little more or less than the limit, at any place in the slots.</summary>
    private static double[] TimesOf(byte[] steps, double slot, double gap, uint fraction)
    {
        double at = (fraction % 1000) / 1000.0 * slot;
        var times = new System.Collections.Generic.List<double> { at };
        foreach (byte step in steps)
        {
            at += step < 40 ? gap - (2 * slot) + (step / 10.0 * slot) + 0.001 : 0.03 * step;
            if (at >= 60)
            {
                break;
            }

            times.Add(Math.Round(at, 4));
        }

        while (60 - at > gap / 3)
        {
            at += gap / 4;
            times.Add(Math.Round(at, 4));
        }

        return [.. times];
    }
}
