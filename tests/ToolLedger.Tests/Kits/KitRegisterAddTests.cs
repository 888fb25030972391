using System;
using System.Collections.Generic;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Kits;

/// <summary>Moments 1, 4 and 5 of the trade: what the library must refuse when a list is about to be signed, beside the lists that are there. All lists are invented.</summary>
public sealed class KitRegisterAddTests
{
    private static readonly DateTimeOffset Start = new(2026, 3, 1, 0, 0, 0, TimeSpan.Zero);
    private static readonly KitManifest K1 = Make("K1", 3, 0, Line(1, "T1", "M-1"), Line(2, "T6", "M-6"));

    [Fact]
    public void A_list_that_nothing_speaks_against_is_added_and_the_former_register_stays_as_it_was()
    {
        var before = new KitRegister([K1]);

        Assert.True(before.TryAdd(Make("K2", 1, 0, Line(1, "U1", "N-1")), [], out KitRegister? after, out IReadOnlyList<RecordIssue> issues));
        Assert.Empty(issues);
        Assert.Equal((1, 2), (before.Manifests.Count, after.Manifests.Count));
        Assert.True(after.TryAdd(K1, [], out KitRegister? again, out _));
        Assert.Same(after, again);
    }

    [Theory]
    [InlineData("tool", "$.lines[1]: The tool T6 is on the manifests of kits K1 and K2 from 2026-03-01T05:00:00Z on. (kit.tool-in-two-kits)")]
    [InlineData("mark", "$.lines[1]: The mark M-6 is on tool T6 of kit K1 and on tool U2 of kit K2 from 2026-03-01T05:00:00Z on. (kit.mark-in-two-kits)")]
    [InlineData("mark of an alternate", "$.lines[1]: The mark M-6 is on tool T6 of kit K1 and on tool U3 of kit K2 from 2026-03-01T05:00:00Z on. (kit.mark-in-two-kits)")]
    [InlineData("not found", "$.lines[1]: The mark M-0 of tool U2 is that of tool T0, which was not found: whoever reads it may take one for the other. (kit.mark-of-tool-not-found)")]
    public void A_list_that_claims_what_another_kit_or_a_tool_not_found_has_is_refused_with_its_line(string what, string expected)
    {
        ManifestLine claim = what switch
        {
            "tool" => Line(7, "T6", "N-7"),
            "mark" => Line(7, "U2", "M-6"),
            "mark of an alternate" => new ToolLine { Number = 7, Tool = Tool("U2", "N-7"), Alternates = [Tool("U3", "M-6")] },
            _ => Line(7, "U2", "M-0"),
        };

        Assert.False(new KitRegister([K1]).TryAdd(Make("K2", 1, 5, Line(1, "U1", "N-1"), claim), [Tool("T0", "M-0"), Tool("T9", null)], out KitRegister? register, out IReadOnlyList<RecordIssue> issues));
        Assert.Null(register);
        RecordIssue issue = Assert.Single(issues);
        Assert.Equal((expected, 7), (issue.ToString(), issue.LineNumber));
    }

    [Fact]
    public void A_tool_that_was_found_again_keeps_its_own_mark()
    {
        Assert.True(new KitRegister([K1]).TryAdd(Make("K2", 1, 5, Line(1, "T0", "M-0")), [Tool("T0", "M-0")], out _, out _));
    }

    [Fact]
    public void A_tool_is_moved_by_first_dropping_it_and_a_list_that_takes_effect_before_that_is_refused()
    {
        var register = new KitRegister([K1]);
        Assert.True(register.TryAdd(Make("K1", 4, 5, Line(1, "T1", "M-1")), [], out KitRegister? dropped, out _));

        Assert.True(dropped.TryAdd(Make("K2", 1, 5, Line(1, "T6", "M-6")), [], out KitRegister? moved, out _));
        Assert.Empty(moved.Faults);
        Assert.False(dropped.TryAdd(Make("K2", 1, 4, Line(1, "T6", "N-6")), [], out _, out IReadOnlyList<RecordIssue> issues));
        Assert.Equal(KitRules.ToolInTwoKits, Assert.Single(issues).Reason.Kind);
    }

    [Fact]
    public void A_list_of_the_future_that_claims_the_tool_is_seen_too()
    {
        var register = new KitRegister([K1, Make("K2", 1, 0, Line(1, "U1", "N-1")), Make("K2", 2, 48, Line(1, "U9", "N-9"))]);

        Assert.False(register.TryAdd(Make("K3", 1, 1, Line(1, "U9", "O-9")), [], out _, out IReadOnlyList<RecordIssue> issues));
        Assert.Contains("from 2026-03-03T00:00:00Z on", Assert.Single(issues).ToString(), StringComparison.Ordinal);
        Assert.True(register.TryAdd(Make("K3", 1, 48, Line(1, "U1", "N-1")), [], out _, out _));
    }

    [Fact]
    public void A_lower_revision_an_edited_one_and_a_kit_inside_itself_are_refused()
    {
        var register = new KitRegister([K1]);

        Assert.Equal("kit.revision-not-latest", Refused(register, Make("K1", 2, 5, Line(1, "T1", "M-1"))));
        Assert.Equal("kit.revision-edited", Refused(register, Make("K1", 3, 0, Line(1, "T1", "M-1"))));
        Assert.Equal("manifest.contains-itself", Assert.Single(Assert.Throws<RecordException>(() => Make("K5", 1, 0, Box(1, "K5", 1))).Issues).Rule);
        Assert.Equal("kit.sub-kit-cycle", Refused(new KitRegister([Make("K6", 1, 0, Box(1, "K5", 1))]), Make("K5", 1, 0, Box(1, "K6", 1))));
    }

    [Fact]
    public void A_box_that_another_kit_holds_is_refused()
    {
        var register = new KitRegister([Make("K4", 1, 0, Line(1, "W1", "W-1")), Make("K6", 1, 0, Box(1, "K4", 1))]);

        Assert.Equal("kit.sub-kit-in-two-kits", Refused(register, Make("K5", 1, 0, Box(3, "K4", 1))));
        Assert.True(register.TryAdd(Make("K6", 2, 5, Box(1, "K4", 1), Line(2, "T2", "M-2")), [], out _, out _));
    }

    /// <summary>A list whose box is not at hand, or not yet in force, cannot be checked; it is refused with its line, and accepted once the box is there.</summary>
    [Fact]
    public void A_list_is_added_after_its_boxes_and_not_before()
    {
        KitManifest outer = Make("K6", 1, 5, Line(1, "T2", "M-2"), Box(4, "K4", 1));
        var register = new KitRegister([K1]);

        Assert.False(register.TryAdd(outer, [], out _, out IReadOnlyList<RecordIssue> issues));
        Assert.Equal(("$.lines[1]", "kit.sub-kit-unresolved", 4), Only(issues));
        Assert.True(register.TryAdd(Make("K4", 1, 6, Line(1, "W1", "W-1")), [], out KitRegister? late, out _));
        Assert.False(late.TryAdd(outer, [], out _, out issues));
        Assert.Equal(("$.lines[1]", "kit.sub-kit-not-in-force", 4), Only(issues));
        Assert.True(register.TryAdd(Make("K4", 1, 5, Line(1, "W1", "W-1")), [], out KitRegister? ready, out _));
        Assert.True(ready.TryAdd(outer, [], out KitRegister? both, out _));
        Assert.Empty(both.Faults);
    }

    /// <summary>Revision 1 of K6 lies in K5. A revision 2 of K6 that lists K5 puts K6 into itself, although no revision lists itself; and so does one over a box between them.</summary>
    [Theory]
    [InlineData("K5", "K6 in K5 in K6")]
    [InlineData("K7", "K6 in K5 in K7 in K6")]
    public void A_new_revision_that_puts_a_kit_into_itself_is_refused(string box, string path)
    {
        var register = new KitRegister([Make("K6", 1, 0, Line(1, "T2", "M-2")), Make("K5", 1, 0, Box(1, "K6", 1)), .. box == "K7" ? (KitManifest[])[Make("K7", 1, 0, Box(1, "K5", 1))] : []]);
        Assert.Empty(register.Faults);

        Assert.False(register.TryAdd(Make("K6", 2, 5, Line(1, "T2", "M-2"), Box(3, box, 1)), [], out KitRegister? added, out IReadOnlyList<RecordIssue> issues));
        Assert.Null(added);
        RecordIssue cycle = Assert.Single(issues, static issue => issue.Rule == "kit.sub-kit-cycle");
        Assert.Equal($"$.lines[1]: Revision 2 of kit K6 contains itself: {path}. (kit.sub-kit-cycle)", cycle.ToString());
        Assert.Equal(3, cycle.LineNumber);
    }

    /// <summary>A box is revised before the list that holds it: no order of adding could do without that, so it is added, and the stale list is a fault until it is revised too.</summary>
    [Fact]
    public void A_box_is_revised_first_and_the_list_around_it_next()
    {
        var register = new KitRegister([Make("K4", 1, 0, Line(1, "W1", "W-1")), Make("K6", 1, 0, Box(1, "K4", 1))]);

        Assert.True(register.TryAdd(Make("K4", 2, 5, Line(1, "W1", "W-1"), Line(2, "W2", "W-2")), [], out KitRegister? between, out _));
        Assert.Equal("kit.sub-kit-not-in-force", Assert.Single(between.Faults).Rule);
        Assert.True(between.TryAdd(Make("K6", 2, 5, Box(1, "K4", 2)), [], out KitRegister? after, out _));
        Assert.Empty(after.Faults);
    }

    /// <summary>Whatever is refused is told with a place in the manifest that was handed in, and not in a list that the caller never saw.</summary>
    [Fact]
    public void The_place_of_an_edited_revision_and_of_sub_kits_too_deep_lies_in_the_manifest()
    {
        Assert.False(new KitRegister([K1]).TryAdd(Make("K1", 3, 0, Line(1, "T1", "M-1")), [], out _, out IReadOnlyList<RecordIssue> issues));
        Assert.Equal("$.revision", Assert.Single(issues).Place);

        var deep = new List<KitManifest> { Make("D0", 1, 0, Line(1, "W1", "W-1")) };
        for (int level = 1; level <= KitRegister.MaxSubKitDepth; level++)
        {
            deep.Add(Make("D" + level, 1, 0, Box(1, "D" + (level - 1), 1)));
        }

        Assert.False(new KitRegister(deep).TryAdd(Make("D9", 1, 0, Box(1, "D8", 1)), [], out _, out issues));
        Assert.Equal(("$.lines", "kit.sub-kits-too-deep"), (Assert.Single(issues).Place, issues[0].Rule));
    }

    private static (string Place, string Rule, int? Line) Only(IReadOnlyList<RecordIssue> issues)
    {
        RecordIssue issue = Assert.Single(issues);
        return (issue.Place, issue.Rule, issue.LineNumber);
    }

    private static string Refused(KitRegister register, KitManifest manifest)
    {
        Assert.False(register.TryAdd(manifest, [], out KitRegister? added, out IReadOnlyList<RecordIssue> issues));
        Assert.Null(added);
        return Assert.Single(issues).Rule;
    }

    private static KitManifest Make(string kit, int revision, int hours, params ManifestLine[] lines) =>
        new(new KitId(kit), revision, "invented kit", Start.AddHours(hours), new Signature { By = new PersonId("p-1"), At = Start }, lines);

    private static ToolLine Line(int number, string tool, string? mark) => new() { Number = number, Tool = Tool(tool, mark) };

    private static SubKitLine Box(int number, string kit, int revision) => new() { Number = number, Kit = new KitId(kit), Revision = revision };

    private static Tool Tool(string id, string? mark) => new() { Id = new ToolId(id), Description = "spanner", Mark = mark };
}
