using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;
using FsCheck.Xunit;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Testing.Generators;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Kits;

/// <summary>Sub-kits, marks and alternates in manifests and registers. The kits are invented.</summary>
public sealed class SubKitRegisterTests
{
    private static readonly DateTimeOffset Start = new(2026, 3, 1, 0, 0, 0, TimeSpan.Zero);

    [Fact]
    public void A_kit_that_lists_itself_is_refused()
    {
        RecordIssue issue = Assert.Single(Assert.Throws<RecordException>(static () => Make("K1", 2, Sub(4, "K1", 1))).Issues);
        Assert.Equal((ManifestRules.ContainsItself.Code, 4), (issue.Rule, issue.LineNumber));
    }

    [Fact]
    public void A_kit_that_contains_itself_over_others_is_refused_with_the_path()
    {
        Assert.False(KitRegister.TryCreate(
            [Make("K3", 1, Sub(1, "K1", 1)), Make("K1", 1, Sub(1, "K2", 1)), Make("K2", 1, Sub(1, "K3", 1))], out _, out IReadOnlyList<RecordIssue> issues));
        Assert.Equal("$[0]: Revision 1 of kit K3 contains itself: K3 in K2 in K1 in K3. (kit.sub-kit-cycle)", Assert.Single(issues).ToString());
    }

    [Theory]
    [InlineData(8, true)]
    [InlineData(9, false)]
    [InlineData(40, false)]
    public void Sub_kits_may_be_eight_levels_deep(int levels, bool isAccepted)
    {
        KitManifest[] chain = [.. Enumerable.Range(0, levels).Select(static i => Make($"K{i}", 1, Sub(1, $"K{i + 1}", 1))), Make($"K{levels}", 1, Line(1, "T1"))];
        foreach (KitManifest[] order in (KitManifest[][])[chain, [.. chain.Reverse()], [.. chain.Skip(levels / 2), .. chain.Take(levels / 2)]])
        {
            Assert.Equal(isAccepted, KitRegister.TryCreate(order, out _, out IReadOnlyList<RecordIssue> issues));
            Assert.Equal(!isAccepted, issues.Any(static issue => issue.Rule == KitRules.SubKitsTooDeep.Code));
        }
    }

    /// <summary>Sixteen kits a layer, each listing all of the next: the paths are without number, the work is not.</summary>
    [Fact]
    public void Many_paths_through_few_kits_are_looked_at_once()
    {
        IEnumerable<KitManifest> kits = Enumerable.Range(0, 9).SelectMany(static layer => Enumerable.Range(0, 16).Select(i => Make(
            $"L{layer}-{i}", 1, layer == 8 ? [Line(1, $"T{i}")] : [.. Enumerable.Range(0, 16).Select(j => (ManifestLine)Sub(j + 1, $"L{layer + 1}-{j}", 1))])));
        Assert.True(KitRegister.TryCreate(kits, out KitRegister? register, out _));
        Assert.Contains(register.Faults, static fault => fault.Rule == KitRules.SubKitInTwoKits.Code);
        Assert.Equal(16, register.ManifestsWith(new KitId("L1-0"), Start).Count);
    }

    [Fact]
    public void A_sub_kit_nobody_handed_in_or_of_a_revision_not_in_force_is_a_fault()
    {
        var register = new KitRegister([Make("K1", 1, Sub(1, "K2", 1), Sub(2, "K3", 1)), Make("K2", 1, Line(1, "T1")), Make("K2", 2, Line(1, "T1"))]);
        Assert.Equal(
            [
                "$: Revision 1 of kit K1 lists revision 1 of kit K2, which is not in force all the time that list is. (kit.sub-kit-not-in-force)",
                "$: Revision 1 of kit K1 lists revision 1 of kit K3, which is not in the register. (kit.sub-kit-unresolved)",
            ],
            register.Faults.Select(static fault => fault.ToString()));
        Assert.Equal([1, 2], register.Faults.Select(static fault => fault.LineNumber));
    }

    /// <summary>A mark may stand for the kit (US Air Force Instruction 21-101, 16 January 2020, paragraph 8.6.1.4.2); on tools of two kits it stands for neither.</summary>
    [Fact]
    public void One_mark_on_tools_of_two_kits_is_a_fault_and_on_tools_of_one_kit_is_not()
    {
        Assert.Empty(new KitRegister([Make("K1", 1, Line(1, "T1", "M"), Line(2, "T2", "M"))]).Faults);
        RecordIssue fault = Assert.Single(new KitRegister([Make("K1", 1, Line(1, "T1", "M"), Line(2, "T2", "M")), Make("K2", 1, Line(5, "U1", "M"))]).Faults);
        Assert.Equal("$: The mark M is on tool T1 of kit K1 and on tool U1 of kit K2 from 2026-03-01T00:00:00Z on. (kit.mark-in-two-kits)", fault.ToString());
    }

    /// <summary>Moments 1 and 23 of the trade: the mark of a tool that was not found is never given to another.</summary>
    [Fact]
    public void A_mark_reused_while_its_tool_is_not_found_is_listed_with_its_bearer()
    {
        KitManifest later = new(new KitId("K2"), 1, "kit", Start.AddDays(1), Signed(), [Line(4, "T9", "M-1")]);
        var register = new KitRegister([Make("K1", 1, Line(1, "T1", "M-1"), Line(2, "T2", "M-2")), later]);
        Tool lost = new() { Id = new ToolId("T0"), Description = "spanner", Mark = "M-1" };

        Assert.Equal(["T1 K1 1", "T9 K2 4"], register.FindMarkReuse([lost], Start.AddDays(2)).Select(static use => $"{use.Tool.Id} {use.Kit} {use.LineNumber}"));
        Assert.Single(register.FindMarkReuse([lost], Start));
        Assert.Empty(register.FindMarkReuse([new Tool { Id = new ToolId("T0"), Description = "spanner" }], Start));
        Assert.Empty(register.FindMarkReuse([((ToolLine)register.Manifests[0].Lines[1]).Tool], Start));
    }

    [Fact]
    public void An_alternate_of_another_segregation_class_is_refused_and_so_is_one_listed_elsewhere()
    {
        Tool oxygen = new() { Id = new ToolId("T5"), Description = "spanner", SegregationClass = "oxygen" };
        Tool plain = new() { Id = new ToolId("T6"), Description = "spanner" };
        Assert.Equal(
            ["$.lines[0].alternates[0]: The alternate T6 is of segregation class none; the tool of the line is of \"oxygen\". (manifest.alternate-of-other-class)"],
            IssuesOf(new ToolLine { Number = 1, Tool = oxygen, Alternates = [plain] }));
        Assert.Equal(
            ["$.lines[1]: The tool T6 is listed on line 1 already. (manifest.same-tool-twice)"],
            IssuesOf(new ToolLine { Number = 1, Tool = new Tool { Id = new ToolId("T7"), Description = "spanner" }, Alternates = [plain] }, new ToolLine { Number = 2, Tool = plain }));
        Assert.Throws<ArgumentException>(() => new ToolLine { Number = 1, Tool = plain, Alternates = [.. Enumerable.Repeat(plain, 17)] });

        KitManifest fine = Make("K1", 1, new ToolLine { Number = 3, Tool = plain, Alternates = [new Tool { Id = new ToolId("T8"), Description = "spanner" }] });
        Assert.Equal(3, fine.FindAlternate(new ToolId("T8"))?.Number);
        Assert.Null(fine.FindAlternate(new ToolId("T6")));
        Assert.Null(fine.FindLine(new ToolId("T8")));
    }

    [Theory]
    [InlineData("\"revision\": 1", "\"revision\": 0", "record.out-of-range")]
    [InlineData("\"kit\": \"K2\",", "", "record.missing-member")]
    [InlineData("\"kit\": \"K2\"", "\"kit\": \"K1\"", "manifest.contains-itself")]
    [InlineData("\"revision\": 1", "\"revision\": 1, \"total\": 3", "record.unknown-member")]
    [InlineData("\"segregationClass\": \"blue\"", "\"segregationClass\": \"red\"", "manifest.alternate-of-other-class")]
    [InlineData("\"id\": \"T3\"", "\"id\": \"T2\"", "manifest.same-tool-twice")]
    [InlineData("\"alternates\": [", "\"alternates\": [ null, ", "record.wrong-type")]
    public void A_stored_sub_kit_or_alternate_that_breaks_a_rule_is_refused(string from, string to, string rule)
    {
        const string Good = """
            {
              "schema": "toolledger/kit-manifest/1", "kit": "K1", "revision": 2, "title": "kit", "effectiveFrom": "2026-03-01T00:00:00Z",
              "signedBy": { "person": "p-1", "at": "2026-03-01T00:00:00Z" },
              "lines": [
                { "line": 1, "kind": "sub-kit", "kit": "K2", "revision": 1, "case": { "id": "T1", "description": "case", "pieces": 1 } },
                { "line": 2, "kind": "tool", "tool": { "id": "T2", "description": "spanner", "pieces": 1, "segregationClass": "blue" },
                  "alternates": [ { "id": "T3", "description": "spanner", "pieces": 1, "segregationClass": "blue" } ] }
              ]
            }
            """;
        Assert.True(KitManifest.TryParse(Encoding.UTF8.GetBytes(Good), out KitManifest? manifest, out IReadOnlyList<RecordIssue> issues), string.Join('\n', issues));
        Assert.Equal("T1", ((SubKitLine)manifest.Lines[0]).Case?.Id.Value);
        int at = Good.LastIndexOf(from, StringComparison.Ordinal);
        string bad = string.Concat(Good.AsSpan(0, at), to, Good.AsSpan(at + from.Length));
        Assert.False(KitManifest.TryParse(Encoding.UTF8.GetBytes(bad), out _, out issues));
        Assert.Contains(issues, issue => issue.Rule == rule);
    }

    [Property(Arbitrary = [typeof(AnyKitRegister)])]
    public bool Parents_and_sub_kits_find_each_other(KitRegister register) => register.Manifests.All(manifest =>
        register.Find(manifest.Id, manifest.EffectiveFrom) != manifest
        || manifest.Lines.OfType<SubKitLine>().All(line =>
            register.ManifestsWith(line.Kit, manifest.EffectiveFrom).Contains(manifest)
            && register.Find(line) == register.Find(line.Kit, line.Revision)));

    private static IEnumerable<string> IssuesOf(params ManifestLine[] lines)
    {
        Assert.False(KitManifest.TryCreate(new KitId("K1"), 1, "kit", Start, Signed(), lines, out _, out IReadOnlyList<RecordIssue> issues));
        return issues.Select(static issue => issue.ToString());
    }

    private static KitManifest Make(string kit, int revision, params ManifestLine[] lines) => new(new KitId(kit), revision, "kit", Start, Signed(), lines);

    private static Signature Signed() => new() { By = new PersonId("p-1"), At = Start };

    private static SubKitLine Sub(int number, string kit, int revision) => new() { Number = number, Kit = new KitId(kit), Revision = revision };

    private static ToolLine Line(int number, string tool, string? mark = null) =>
        new() { Number = number, Tool = new Tool { Id = new ToolId(tool), Description = "spanner", Mark = mark } };
}
