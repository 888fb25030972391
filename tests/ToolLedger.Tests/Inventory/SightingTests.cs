using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Inventory;

public sealed class SightingTests
{
    private static readonly DateTimeOffset Now = new(2026, 3, 1, 15, 50, 0, TimeSpan.FromHours(1));

    [Fact]
    public void S18_a_sighting_holds_tool_mark_person_time_and_place()
    {
        bool isMade = Sighting.TryCreate(new ToolId("T9"), "K1-09", new PersonId("Q"), Now, new Place("bay 2"), out Sighting? sighting, out IReadOnlyList<RecordIssue> issues);

        Assert.True(isMade);
        Assert.Empty(issues);
        Assert.Equal(("T9", "K1-09", "Q", Now, "bay 2"), (sighting!.Tool.Value, sighting.MarkRead, sighting.By.Value, sighting.At, sighting.Where.Value));
    }

    [Fact]
    public void S19_seen_it_alone_is_refused_and_everything_missing_is_told_at_once()
    {
        bool isMade = Sighting.TryCreate(new ToolId("T9"), null, default, default, default, out Sighting? sighting, out IReadOnlyList<RecordIssue> issues);

        Assert.False(isMade);
        Assert.Null(sighting);
        Assert.Equal(
            ["inventory.sighting-without-mark", "inventory.sighting-not-signed", "inventory.sighting-without-time", "inventory.sighting-without-place"],
            issues.Select(issue => issue.Rule),
            StringComparer.Ordinal);
    }

    [Theory]
    [InlineData("no mark", "", "Q", "bay 2", "inventory.sighting-without-mark")]
    [InlineData("no name", "K1-09", "", "bay 2", "inventory.sighting-not-signed")]
    [InlineData("no place", "K1-09", "Q", "", "inventory.sighting-without-place")]
    [InlineData("a mark that no tool can carry", "K1\u000709", "Q", "bay 2", "inventory.bad-mark")]
    [InlineData("a mark with white space at its end", "K1-09 ", "Q", "bay 2", "inventory.bad-mark")]
    [InlineData("a mark that is too long", "123456789012345678901234567890123", "Q", "bay 2", "inventory.bad-mark")]
    public void S19_one_thing_missing_is_refused_with_its_own_code(string why, string mark, string by, string where, string rule)
    {
        PersonId person = by.Length == 0 ? default : new PersonId(by);
        Place place = where.Length == 0 ? default : new Place(where);

        Assert.False(Sighting.TryCreate(new ToolId("T9"), mark, person, Now, place, out _, out IReadOnlyList<RecordIssue> issues), why);
        Assert.Equal(rule, Assert.Single(issues).Rule);

        // The same rule by the other door: an initializer cannot make what TryCreate refuses.
        ArgumentException refusal = Assert.Throws<ArgumentException>(() => new Sighting { Tool = new ToolId("T9"), MarkRead = mark, By = person, At = Now, Where = place });
        Assert.Contains(rule, refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_count_without_unit_and_a_count_without_name_cannot_be_made()
    {
        Assert.Throws<ArgumentException>(() => new LineCount { Kit = new KitId("K1"), LineNumber = 15, Quantity = default, By = new PersonId("P"), At = Now });
        Assert.Throws<ArgumentException>(() => new LineCount { Kit = new KitId("K1"), LineNumber = 15, Quantity = new Quantity(6, Unit.Each), By = default, At = Now });
        Assert.Throws<ArgumentException>(() => new PieceCount { Tool = new ToolId("T10"), Pieces = -1, By = new PersonId("P"), At = Now });
    }
}
