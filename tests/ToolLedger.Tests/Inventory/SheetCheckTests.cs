using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Inventory;

/// <summary>What a host can refuse at the moment somebody enters it, because the list shows that it settles nothing. The kit is invented.</summary>
public sealed class SheetCheckTests
{
    private static readonly DateTimeOffset Start = new(2026, 3, 2, 8, 0, 0, TimeSpan.Zero);
    private static readonly DateTimeOffset At = Start.AddHours(8);
    private static readonly KitId K1 = new("K1");
    private static readonly PersonId P = new("P");

    private static readonly KitManifest Box = Make("K4", 1, 0, Line(1, "W1", "K1"));
    private static readonly KitManifest Third = Make("K1", 3, 0,
        Line(8, "T8", "K1"),
        new ToolLine { Number = 9, Tool = Tool("T9", "K1-9"), Alternates = [Tool("A9", "A-9")] },
        new ConsumableLine { Number = 14, Description = "safety wire", Quantity = new Quantity(1, new Unit("spool")) },
        new CountedLine { Number = 15, Description = "rags", Quantity = new Quantity(6, Unit.Each) },
        new SubKitLine { Number = 20, Kit = new KitId("K4"), Revision = 1 });

    private static readonly KitRegister Kits = new([Third, Make("K1", 4, 2, Line(8, "T8", "K1-8")), Box]);
    private static readonly Dictionary<KitId, int> Issued = new() { [K1] = 3 };

    /// <summary>Scenario S49: 10 m is entered for a line kept in spools.</summary>
    [Fact]
    public void S49_a_count_in_another_unit_is_refused_when_it_is_recorded()
    {
        RecordIssue issue = Assert.Single(Check(new InventoryEntries { Counts = [Count(14, 10, "m")] }));

        Assert.Equal("$.counts[0].unit: Line 14 is kept in the unit \"spool\", and this is in \"m\"; nothing is converted. (inventory.other-unit-than-line)", issue.ToString());
        Assert.Empty(Check(new InventoryEntries { Counts = [Count(14, 10, "spool"), Count(15, 0, "each")] }));
    }

    /// <summary>Scenario S35: two tools share one short mark, here T8 in the bag and W1 in the box inside it, and only that mark is entered.</summary>
    [Fact]
    public void S35_a_mark_that_several_tools_carry_is_refused_when_it_is_recorded_and_asks_for_what_tells_them_apart()
    {
        RecordIssue issue = Assert.Single(Check(new InventoryEntries { Sightings = [Sight("T8", "K1"), Sight("W1", "K1", "13 mm, serial 4471"), Sight("T9", "K1-9")] }));

        Assert.Equal(
            "$.sightings[0].markRead: The mark K1 is on 2 tools of kit K1 and does not identify T8: say its serial number, size or description, or let its tag be read. (inventory.mark-of-several)",
            issue.ToString());
    }

    [Fact]
    public void What_contradicts_the_list_is_evidence_and_no_issue()
    {
        var entries = new InventoryEntries
        {
            Counts = [Count(15, 7, "each"), Count(9, 0, "each")],
            Sightings = [Sight("T9", "K7-77"), Sight("W1", "X")],
            Openings = [new KitOpening { Kit = K1, By = P, At = At }],
        };

        Assert.Empty(Check(entries));
    }

    [Fact]
    public void Every_entry_that_speaks_of_nothing_listed_is_told_in_one_go()
    {
        var entries = new InventoryEntries
        {
            Counts = [Count(77, 1, "each"), new LineCount { Kit = new KitId("K77"), LineNumber = 1, Quantity = new Quantity(1, Unit.Each), By = P, At = At }],
            Annotations = [new Annotation { Kit = K1, LineNumber = 15, Kind = AnnotationKind.Shortage, ShortBy = new Quantity(1, new Unit("box")), Reason = "worn", SignedBy = new Signature { By = P, At = At } }],
            Uses = [new ConsumableUse { Kit = K1, LineNumber = 15, Job = "J-1", Unit = Unit.Each, Used = 1, By = P, At = At }],
            Joinings = [new JoiningStatement { Kit = K1, LineNumber = 16, Parts = 2, Wholes = 1, By = P, At = At }],
            Substitutions = [Swap(9, "A9"), Swap(9, "T9"), Swap(8, "A9")],
            Openings = [new KitOpening { Kit = new KitId("K78"), By = P, At = At }],
            Breakages = [new Breakage { Tool = new ToolId("NOBODY-1"), Pieces = 2, By = P, At = At }],
            PieceCounts = [new PieceCount { Tool = new ToolId("A9"), Pieces = 1, By = P, At = At }],
        };

        Assert.Equal(
            [
                "$.counts[0].line inventory.no-such-line",
                "$.counts[1].kit inventory.no-such-kit",
                "$.annotations[0].unit inventory.other-unit-than-line",
                "$.uses[0].line inventory.use-of-no-consumable",
                "$.joinings[0].line inventory.no-such-line",
                "$.substitutions[2].inPlace inventory.not-an-alternate",
                "$.openings[0].kit inventory.no-such-kit",
                "$.breakages[0].tool inventory.tool-on-no-list",
            ],
            Check(entries).Select(static issue => $"{issue.Place} {issue.Rule}"));
    }

    /// <summary>A slip of the pen, T-O9 for T9, names no tool at all: the person who made it still stands there and can mend it. An alternate and a tool of another list are listed, so they pass as evidence.</summary>
    [Fact]
    public void A_sighting_of_a_tool_on_no_list_is_refused_when_it_is_recorded()
    {
        RecordIssue issue = Assert.Single(Check(new InventoryEntries { Sightings = [Sight("T9", "K1-9"), Sight("T-O9", "K1-9"), Sight("A9", "A-9"), Sight("W1", "K1", "13 mm")] }));

        Assert.Equal("$.sightings[1].tool: The tool T-O9 is on no list that holds at 2026-03-02T16:00:00Z. (inventory.tool-on-no-list)", issue.ToString());
        var inForce = new KitRegister([Third, Box]);
        Assert.Empty(new InventorySheet(new InventoryEntries { Sightings = [Sight("A9", "A-9")] }).CheckAgainst(inForce));
        Assert.Single(new InventorySheet(new InventoryEntries { Sightings = [Sight("A9", "A-9")] }).CheckAgainst(Kits));
    }

    /// <summary>What is wrong with a line is told with its number, so that a host can mark it.</summary>
    [Fact]
    public void An_issue_about_a_line_carries_its_number()
    {
        var entries = new InventoryEntries { Uses = [new ConsumableUse { Kit = K1, LineNumber = 15, Job = "J-1", Unit = Unit.Each, Used = 1, By = P, At = At }], Substitutions = [Swap(8, "A9")], Sightings = [Sight("T8", "K1")] };

        Assert.Equal([15, 8, 8], Check(entries).Select(static issue => issue.LineNumber ?? 0));
    }

    /// <summary>A kit that is out is held against the list it went out with; without that knowledge the revision in force counts, which has no line 15.</summary>
    [Fact]
    public void The_revision_a_kit_was_issued_under_is_the_list_that_counts()
    {
        var sheet = new InventorySheet(new InventoryEntries { Counts = [Count(15, 6, "each")], Sightings = [Sight("T9", "K1-9")], PieceCounts = [new PieceCount { Tool = new ToolId("T9"), Pieces = 1, By = P, At = At }] });

        Assert.Empty(sheet.CheckAgainst(Kits, Issued));
        Assert.Equal(["inventory.no-such-line", "inventory.tool-on-no-list", "inventory.tool-on-no-list"], sheet.CheckAgainst(Kits).Select(static issue => issue.Rule));
        Assert.Equal(["inventory.no-such-kit"], new InventorySheet(new InventoryEntries { Counts = [Count(15, 6, "each")] }).CheckAgainst(Kits, new Dictionary<KitId, int> { [K1] = 9 }).Select(static issue => issue.Rule));
    }

    private static IReadOnlyList<RecordIssue> Check(InventoryEntries entries) => new InventorySheet(entries).CheckAgainst(Kits, Issued);

    private static KitManifest Make(string kit, int revision, int hours, params ManifestLine[] lines) =>
        new(new KitId(kit), revision, "invented kit", Start.AddHours(hours), new Signature { By = P, At = Start }, lines);

    private static ToolLine Line(int number, string tool, string mark) => new() { Number = number, Tool = Tool(tool, mark) };

    private static Tool Tool(string id, string mark) => new() { Id = new ToolId(id), Description = "spanner", Mark = mark };

    private static LineCount Count(int line, decimal amount, string unit) => new() { Kit = K1, LineNumber = line, Quantity = new Quantity(amount, new Unit(unit)), By = P, At = At };

    private static Sighting Sight(string tool, string mark, string? also = null) =>
        new() { Tool = new ToolId(tool), MarkRead = mark, AlsoIdentifiedBy = also, By = P, At = At, Where = new Place("bench 2"), InKit = K1 };

    private static Substitution Swap(int line, string tool) => new() { Kit = K1, LineNumber = line, InPlace = new ToolId(tool), Reason = "like for like", By = P, At = At };
}
