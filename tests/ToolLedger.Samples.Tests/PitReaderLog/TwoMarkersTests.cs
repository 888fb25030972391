using System;
using System.Collections.Generic;
using System.Linq;
using PitReaderLog;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using Xunit;

namespace ToolLedger.Samples.Tests.PitReaderLog;

/// <summary>reader_1: two marker tags that are always there. One is the control tag, the other stands for a kit of one tool.</summary>
public sealed class TwoMarkersTests
{
    private static readonly LogCloseout Log = Logs.OfReader1();

    [Fact]
    public void While_the_marker_fires_the_tag_that_is_there_is_accounted_for_by_read_in_hourly_windows()
    {
        List<ReconciliationResult> results = [.. Hours()];

        Assert.All(results.Where(result => result.Lines[0].IsAccounted), result => Assert.Equal(AccountingBasis.Read, result.Lines[0].Basis));
        Assert.All(results.Where(result => result.Lines[0].IsAccounted), result => Assert.Equal(KitState.Complete, result.Kit.State));
        Assert.True(results.Count(result => result.Lines[0].IsAccounted) >= 10, string.Join(", ", results.Select(result => result.Kit.ToString())));
    }

    [Fact]
    public void Without_the_control_tag_near_both_ends_nothing_is_accounted_for()
    {
        Assert.All(
            Hours().Where(result => !result.Sessions[0].Session.IsUsable),
            result => Assert.Equal(KitState.NoValidRead, result.Kit.State));
    }

    [Fact]
    public void Animal_tags_on_no_list_come_out_unknown_and_every_read_has_one_explanation()
    {
        ReconciliationResult result = Log.Conclude(Log.Span.First, Log.Span.Last.AddSeconds(1));
        IReadOnlyList<TagRead> reads = Logs.Read("reader_1.txt").Reads;

        Assert.Equal(
            ["900_228000004988", "900_228000004991", "900_228000004996", "900_230000087400"],
            result.Reads.Where(read => read.Kind == ReadExplanationKind.Unknown).Select(read => read.Tag.Text).Order(StringComparer.Ordinal));
        Assert.Equal(reads.Count(read => read.Tag.Text.StartsWith("900_", StringComparison.Ordinal)), result.CountOf(ReadExplanationKind.Unknown));
        Assert.Equal(reads.Count, result.Reads.Sum(read => read.ReadCount));
    }

    private static IEnumerable<ReconciliationResult> Hours()
    {
        for (DateTimeOffset from = Log.Span.First; from.AddHours(1) <= Log.Span.Last; from = from.AddHours(1))
        {
            yield return Log.Conclude(from, from.AddHours(1));
        }
    }
}
