using System;
using System.Collections.Generic;
using System.Linq;
using AngleSharp.Dom;
using ToolLedger.Reconciliation;
using Xunit;

namespace ToolLedger.Tests.Reports;

/// <summary>The card of a kit on the first screen: nobody who stops there may take the first open line for the only one.</summary>
public sealed class HtmlCardTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(8)]
    [InlineData(9)]
    [InlineData(12)]
    public void It_names_the_open_lines_in_their_order_up_to_eight_and_counts_the_rest(int silent)
    {
        var shift = new TurbineShift { NotRead = [.. Enumerable.Range(1, silent)], Weak = [] };
        ReconciliationResult result = shift.Reconcile();
        IReadOnlyList<LineConclusion> chase = result.ChaseList;
        using IDocument page = Html.Parse(shift.Report(result).ToHtml());
        IElement card = page.QuerySelector(".card")!;

        Assert.Equal(silent, chase.Count);
        string[] named = [.. card.Texts(".what"), .. card.Texts(".then li")];
        Assert.Equal(Math.Min(silent, 8), named.Length);
        foreach ((string text, LineConclusion line) in named.Zip(chase))
        {
            Assert.Contains($"line {line.Label} {line.Line.Description}", text, StringComparison.Ordinal);
        }

        // Each with its state as a word, the first with the step that settles it fastest.
        Assert.All(card.Texts(".then li"), static text => Assert.StartsWith("NOT READ line ", text, StringComparison.Ordinal));
        Assert.Equal(silent > 0 ? 1 : 0, card.QuerySelectorAll(".next").Length);
        Assert.All(card.QuerySelectorAll("ol.then"), static list => Assert.Equal("2", list.GetAttribute("start")));
        string open = card.QuerySelectorAll(".counts a")[1].GetAttribute("href")!;
        string[] more = [.. card.QuerySelectorAll("a").Where(link => link.GetAttribute("href") == open).Skip(1).Select(Html.TextOf)];
        Assert.Equal(silent > 8 ? [FormattableString.Invariant($"and {silent - 8} more")] : (string[])[], more);
    }

    [Fact]
    public void Lines_open_for_different_reasons_stand_each_with_its_own_word()
    {
        using IDocument page = Html.Parse(new TurbineShift().Report().ToHtml());

        Assert.Equal("First NOT READ", Html.TextOf(page.QuerySelector(".card .lead")!));
        Assert.Equal(["WEAK line 11 Inspection mirror [B07-11]"], page.Texts(".card .then li"));
    }
}
