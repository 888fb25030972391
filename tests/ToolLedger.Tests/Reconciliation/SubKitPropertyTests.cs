using System;
using System.Collections.Generic;
using System.Linq;
using FsCheck.Xunit;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>The properties of the trade's list, with kits inside kits: which tools were read is drawn at random.</summary>
public sealed class SubKitPropertyTests
{
    private static readonly string[] Tools = ["T1", "T2", "CASE", "A1", "A2", "A3", "A4", "A5", "B1", "B2"];

    [Property(MaxTest = 1_000)]
    public void P01_Every_line_inside_and_outside_gets_one_conclusion_and_every_read_one_explanation(int seed, bool hasCase, bool isNested)
    {
        int mask = Drawn(seed);
        (SubKitWorld shift, ReadSession session) = Shift(mask, hasCase, isNested);
        ReconciliationResult result = shift.Reconcile(World.K1, session);

        string[] labels = [.. result.AllLines.Select(static line => line.Label)];
        Assert.Equal(isNested ? 11 : 8, labels.Distinct(StringComparer.Ordinal).Count());
        Assert.Equal(labels.Length, result.Kit.LineCount);
        Assert.Equal(result.Kit.LineCount, Enum.GetValues<LineState>().Sum(result.Kit.CountOf));
        Assert.Equal(session.ReadCount, Enum.GetValues<ReadExplanationKind>().Sum(result.CountOf));
        Assert.Equal(result.AllLines.Count(static line => !line.IsAccounted), result.ChaseList.Count);
        Assert.All(result.AllLines, static line =>
        {
            Assert.NotEmpty(line.Reasons);
            Assert.Equal(line.IsAccounted, line.Next is null);
            Assert.Equal(line.IsAccounted, line.Basis != AccountingBasis.None);
        });
    }

    [Property(MaxTest = 1_000)]
    public void A_box_is_accounted_for_exactly_when_its_case_and_all_that_is_in_it_are(int seed, bool hasCase, bool isNested)
    {
        int mask = Drawn(seed);
        (SubKitWorld shift, ReadSession session) = Shift(mask, hasCase, isNested);
        ReconciliationResult result = shift.Reconcile(World.K1, session);

        foreach (LineConclusion box in result.AllLines.Where(static line => line.Inner.Count > 0))
        {
            bool isCaseRead = box.Line.Tool is not { } part || IsDrawn(mask, part.Id.Value);
            Assert.Equal(isCaseRead && box.Inner.All(static line => line.IsAccounted), box.IsAccounted);
        }

        Assert.All(result.AllLines.Where(static line => line.Line.Tool is not null && line.IsAccounted), line => Assert.True(IsDrawn(mask, line.Line.Tool!.Id.Value)));
        Assert.Equal(result.AllLines.All(static line => line.IsAccounted), result.Kit.State == KitState.Complete);
        Assert.Equal(Expected(hasCase, isNested).All(tool => IsDrawn(mask, tool)), result.Kit.State == KitState.Complete);
    }

    [Property(MaxTest = 500)]
    public void P05_Taking_reads_away_settles_no_line(int seed, int less, bool hasCase, bool isNested)
    {
        int mask = Drawn(seed);
        (SubKitWorld shift, ReadSession session) = Shift(mask, hasCase, isNested);
        (SubKitWorld poorer, ReadSession fewer) = Shift(mask & Drawn(less), hasCase, isNested);
        IEnumerable<bool> before = shift.Reconcile(World.K1, session).AllLines.Select(static line => line.IsAccounted);
        IEnumerable<bool> after = poorer.Reconcile(World.K1, fewer).AllLines.Select(static line => line.IsAccounted);

        Assert.DoesNotContain(before.Zip(after), static pair => !pair.First && pair.Second);
    }

    /// <summary>Seven tools of eight are read, so that complete kits occur and not only open ones.</summary>
    private static int Drawn(int seed)
    {
        var random = new Random(seed);
        return random.Next(1 << 10) | random.Next(1 << 10) | random.Next(1 << 10);
    }

    private static bool IsDrawn(int mask, string tool) => (mask >> Array.IndexOf(Tools, tool) & 1) != 0;

    private static IEnumerable<string> Expected(bool hasCase, bool isNested) =>
        Tools.Where(tool => (hasCase || tool is not "CASE") && (isNested || tool is not ("B1" or "B2")));

    private static (SubKitWorld Shift, ReadSession Session) Shift(int mask, bool hasCase, bool isNested)
    {
        SubKitWorld shift = new SubKitWorld { HasCase = hasCase, IsNestedTwice = isNested }.ReadWell([.. Tools.Where(tool => IsDrawn(mask, tool))]);
        return (shift, shift.World.Session());
    }
}
