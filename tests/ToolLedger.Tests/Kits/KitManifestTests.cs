using System;
using System.Collections.Generic;
using System.Linq;
using FsCheck.Xunit;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Testing.Generators;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Kits;

public sealed class KitManifestTests
{
    private static readonly DateTimeOffset Start = new(2026, 3, 1, 6, 0, 0, TimeSpan.FromHours(1));
    private static readonly Signature Signed = new() { By = new PersonId("p-1"), At = Start };

    [Property(Arbitrary = [typeof(AnyManifest)])]
    public bool Every_line_is_found_by_its_number_and_every_tool_by_its_id(KitManifest manifest) =>
        manifest.Lines.All(line => manifest.FindLine(line.Number) == line && (line.Tool is null || manifest.FindLine(line.Tool.Id) == line))
        && manifest.FindLine(9_999) is null && manifest.FindLine(new ToolId("no such tool")) is null;

    [Property(Arbitrary = [typeof(AnyManifest)])]
    public bool The_order_in_which_lines_are_given_changes_nothing(KitManifest manifest, int seed)
    {
        ManifestLine[] shuffled = [.. manifest.Lines];
        new Random(seed).Shuffle(shuffled);
        return Rebuild(manifest, shuffled).Digest == manifest.Digest;
    }

    [Property(Arbitrary = [typeof(AnyManifest)])]
    public bool One_tool_on_a_second_line_is_always_refused(KitManifest manifest)
    {
        ManifestLine? listed = manifest.Lines.FirstOrDefault(line => line.Tool is not null);
        return listed is null || !KitManifest.TryCreate(manifest.Id, manifest.Revision, manifest.Title, manifest.EffectiveFrom, manifest.SignedBy,
            [.. manifest.Lines, new ToolLine { Number = 9_999, Tool = listed.Tool! }], out _, out IReadOnlyList<RecordIssue> issues)
            && issues.Single().Reason.Kind == ManifestRules.SameToolTwice && issues.Single().LineNumber == 9_999;
    }

    /// <summary>Scenario S40 of the trade: a manifest lists T3 on two lines and is to be signed.</summary>
    [Fact]
    public void S40_the_same_tool_on_two_lines_is_refused_when_the_manifest_is_signed()
    {
        RecordException exception = Assert.Throws<RecordException>(() => Make(Line(1, "T1"), Line(3, "T3"), Line(7, "T3")));
        RecordIssue issue = Assert.Single(exception.Issues);
        Assert.Equal("manifest.same-tool-twice", issue.Rule);
        Assert.Equal(7, issue.LineNumber);
        Assert.Equal("$.lines[2]: The tool T3 is listed on line 3 already. (manifest.same-tool-twice)", issue.ToString());
    }

    [Fact]
    public void S40_holds_for_the_container_of_a_set_too()
    {
        var set = new SetLine { Number = 2, Container = Tool("T3"), Contents = "hex keys", TotalCount = 10 };
        Assert.Equal("manifest.same-tool-twice", Assert.Single(Assert.Throws<RecordException>(() => Make(Line(1, "T3"), set)).Issues).Rule);
    }

    [Fact]
    public void Every_issue_is_told_at_once_with_its_line()
    {
        bool made = KitManifest.TryCreate(default, 0, "\u202ekit", Start.AddYears(2000), null,
            [
                Line(1, "T1"),
                Line(1, "T1"),
                new CountedLine { Number = 2, Description = "rags", Quantity = default },
                new ConsumableLine { Number = 3, Description = "wire", Quantity = new Quantity(0, new Unit("spool")) },
            ],
            out KitManifest? manifest, out IReadOnlyList<RecordIssue> issues);
        Assert.False(made);
        Assert.Null(manifest);
        Assert.Equal(
            """
            $.kit record.text-empty
            $.revision record.out-of-range
            $.title record.text-not-printable
            $.effectiveFrom record.time-out-of-range
            $.signedBy manifest.not-signed
            $.lines[1].line manifest.duplicate-line-number 1
            $.lines[1] manifest.same-tool-twice 1
            $.lines[2].quantity manifest.line-without-quantity 2
            $.lines[2].unit manifest.line-without-unit 2
            $.lines[3].quantity manifest.line-without-quantity 3
            """,
            string.Join('\n', issues.Select(issue => $"{issue.Place} {issue.Rule} {issue.LineNumber}".TrimEnd())));
    }

    [Fact]
    public void A_manifest_without_a_line_is_refused() =>
        Assert.Equal("manifest.empty", Assert.Single(Assert.Throws<RecordException>(() => Make()).Issues).Rule);

    [Fact]
    public void More_than_10000_lines_are_refused_without_looking_at_the_rest()
    {
        int taken = 0;
        IEnumerable<ManifestLine> lines = Enumerable.Range(0, 1_000_000).Select(i =>
        {
            taken++;
            return Line(1 + (i % 9_999), $"T{i}");
        });
        RecordException exception = Assert.Throws<RecordException>(() =>
            new KitManifest(new KitId("K1"), 1, "kit", Start, Signed, lines));
        Assert.Contains(exception.Issues, issue => issue.Reason.Kind == ManifestRules.TooManyLines);
        Assert.Equal(10_001, taken);
    }

    [Fact]
    public void Two_tools_may_share_a_mark() =>
        Assert.Equal(2, Make(Line(1, "T1", "K1A"), Line(2, "T2", "K1A")).Lines.Count);

    [Fact]
    public void Each_kind_of_line_says_what_it_expects()
    {
        Assert.Equal(new Quantity(1, Unit.Each), Line(1, "T1").Expected);
        var set = new SetLine { Number = 13, Container = Tool("T13"), Contents = "nine hex keys and holder", TotalCount = 10 };
        Assert.Equal(new Quantity(10, Unit.Each), set.Expected);
        Assert.Equal("T13", ((ManifestLine)set).Tool?.Id.Value);
        Assert.Equal("line 13: nine hex keys and holder, 10 each", set.ToString());
        ManifestLine rags = new CountedLine { Number = 15, Description = "rags", Quantity = new Quantity(6, Unit.Each) };
        Assert.Equal("rags", rags.Description);
        Assert.Equal(new Quantity(6, Unit.Each), rags.Expected);
        Assert.Null(rags.Tool);
    }

    [Fact]
    public void A_line_guards_its_own_values()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Line(0, "T1"));
        Assert.Throws<ArgumentOutOfRangeException>(() => Line(10_000, "T1"));
        Assert.Throws<ArgumentNullException>(() => new ToolLine { Number = 1, Tool = null! });
        Assert.Throws<ArgumentException>(() => new ToolLine { Number = 1, Tool = Tool("T1"), Location = "" });
        Assert.Throws<ArgumentOutOfRangeException>(() => new SetLine { Number = 1, Container = Tool("T1"), Contents = "keys", TotalCount = 1 });
        Assert.Throws<ArgumentOutOfRangeException>(() => new SetLine { Number = 1, Container = Tool("T1"), Contents = "keys", TotalCount = 1_000 });
        Assert.Throws<ArgumentException>(() => new CountedLine { Number = 1, Description = "rags\u0007", Quantity = new Quantity(1, Unit.Each) });
        Assert.Throws<ArgumentNullException>(() => Make(null!));
    }

    private static KitManifest Make(params ManifestLine[] lines) => new(new KitId("K1"), 3, "kit", Start, Signed, lines);

    private static KitManifest Rebuild(KitManifest manifest, IEnumerable<ManifestLine> lines) =>
        new(manifest.Id, manifest.Revision, manifest.Title, manifest.EffectiveFrom, manifest.SignedBy, lines);

    private static ToolLine Line(int number, string tool, string? mark = null) => new() { Number = number, Tool = Tool(tool, mark) };

    private static Tool Tool(string id, string? mark = null) => new() { Id = new ToolId(id), Description = "spanner", Mark = mark };
}
