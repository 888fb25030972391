using System;
using System.Linq;
using PitReaderLog;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using Xunit;

namespace ToolLedger.Samples.Tests.PitReaderLog;

/// <summary>reader_3: a known tag that falls silent because the reader did. The kit's tag never occurs, so nothing may ever account for it.</summary>
public sealed class SilenceTests
{
    private static readonly LogCloseout Log = Logs.OfReader3();

    // A policy that takes one read for enough, so that nothing but the session's health holds it back.
    private static readonly LogCloseout AtStatedRisk = Logs.OfReader3(new StatedRiskPolicy { KitRiskLimit = 0.5m, LineRiskMax = 0.5m });

    // Silences between two records of the marker, in the file's own times: 5284.5 s and 6357.4 s.
    public static TheoryData<DateTimeOffset, DateTimeOffset> Silences { get; } = new()
    {
        { Utc(11, 38, 57, 600), Utc(13, 7, 2, 100) },
        { Utc(13, 54, 2, 0), Utc(15, 39, 59, 400) },
    };

    [Theory]
    [MemberData(nameof(Silences))]
    public void Inside_a_silence_the_answer_is_never_anything_but_no_valid_read(DateTimeOffset from, DateTimeOffset to)
    {
        int asked = 0;
        foreach (double minutes in (double[])[0.5, 1, 5, 20, 60])
        {
            for (DateTimeOffset start = from.AddSeconds(1); start + TimeSpan.FromMinutes(minutes) <= to; start += TimeSpan.FromSeconds(97))
            {
                ReconciliationResult result = Log.Conclude(start, start + TimeSpan.FromMinutes(minutes));

                Assert.Equal(KitState.NoValidRead, result.Kit.State);
                Assert.Equal(SessionState.Invalid, result.Sessions[0].Session.Health.State);
                Assert.Equal(LineState.NotAssessed, result.Lines[0].State);
                ReconciliationResult stated = AtStatedRisk.Conclude(start, start + TimeSpan.FromMinutes(minutes));
                Assert.Equal((KitState.NoValidRead, LineState.NotAssessed, 0), (stated.Kit.State, stated.Lines[0].State, stated.Kit.Risk!.LineCount));
                asked++;
            }
        }

        Assert.True(asked > 150, $"{asked} windows");
    }

    [Theory]
    [MemberData(nameof(Silences))]
    public void A_window_that_reaches_into_a_silence_from_either_side_is_no_valid_read_either(DateTimeOffset from, DateTimeOffset to)
    {
        for (int minutes = 4; minutes <= 40; minutes += 4)
        {
            Assert.Equal(KitState.NoValidRead, Log.Conclude(from.AddMinutes(-20), from.AddMinutes(minutes)).Kit.State);
            Assert.Equal(KitState.NoValidRead, Log.Conclude(to.AddMinutes(-minutes), to.AddMinutes(20)).Kit.State);
        }
    }

    [Fact]
    public void A_window_across_a_whole_silence_is_degraded_at_best_and_names_the_gap()
    {
        ReconciliationResult result = Log.Conclude(Utc(11, 10, 0, 0), Utc(13, 30, 0, 0));
        SessionHealth health = result.Sessions[0].Session.Health;

        Assert.NotEqual(SessionState.Valid, health.State);
        Assert.Contains(health.Reasons, reason => reason.Code == SessionReasons.SilenceGap.Code);
        Assert.DoesNotContain(result.Lines, line => line.IsAccounted);
    }

    [Fact]
    public void Where_the_marker_fires_the_session_is_usable_and_the_tag_that_never_occurs_is_not_read()
    {
        int usable = 0;
        for (DateTimeOffset start = new(2019, 10, 31, 17, 0, 0, TimeSpan.Zero); start < new DateTimeOffset(2019, 11, 1, 7, 30, 0, TimeSpan.Zero); start += TimeSpan.FromMinutes(30))
        {
            ReconciliationResult result = Log.Conclude(start, start + TimeSpan.FromMinutes(30));
            SessionSummary session = result.Sessions[0];
            usable += session.Session.IsUsable ? 1 : 0;
            Assert.Equal(session.Session.IsUsable ? LineState.NotRead : LineState.NotAssessed, result.Lines[0].State);
            Assert.Equal(session.Session.IsUsable ? KitState.Open : KitState.NoValidRead, result.Kit.State);
        }

        Assert.InRange(usable, 20, 29);
    }

    [Fact]
    public void Ids_on_no_list_come_out_unknown_listed_and_counted()
    {
        ReconciliationResult result = Log.Conclude(Log.Span.First, Log.Span.Last);
        ReadExplanation[] unknown = [.. result.Reads.Where(read => read.Kind == ReadExplanationKind.Unknown).OrderBy(read => read.Tag.Text, StringComparer.Ordinal)];

        Assert.Equal(["0000_000000002489", "0671_338237264481", "0_000000002489", "1209_450359747569", "2032_350284139216"], unknown.Select(read => read.Tag.Text));
        Assert.Equal([2, 1, 3, 1, 1], unknown.Select(read => read.ReadCount));
        Assert.Equal(8, result.CountOf(ReadExplanationKind.Unknown));
    }

    private static DateTimeOffset Utc(int hour, int minute, int second, int millisecond) => new(2019, 10, 31, hour, minute, second, millisecond, TimeSpan.Zero);
}
