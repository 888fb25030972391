using System;
using System.Collections.Generic;
using System.Linq;
using FsCheck.Xunit;
using ToolLedger.Kits;
using ToolLedger.Policies;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tests.Reconciliation;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Kits;

/// <summary>The form of marks as a setting. The forms and the examples U6JG00001 and U6JG1 are those of US Air Force Instruction 21-101 (16 January 2020), 8.6.1.1 to 8.6.1.4.2.</summary>
public sealed class MarkFormatTests
{
    private const string LettersAndDigits = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789";

    private static readonly MarkFormat Nine = new() { MinLength = 9, MaxLength = 9, Characters = LettersAndDigits, Beginnings = ["U6JG"] };

    private static readonly MarkFormat InABox = Nine with { MinLength = 5 };

    [Theory]
    [InlineData("U6JG00001", true, true)]
    [InlineData("U6JG1", false, true)]
    [InlineData("U6JG", false, false)]
    [InlineData("U6JG000010", false, false)]
    [InlineData("U7JG00001", false, false)]
    [InlineData("u6jg00001", false, false)]
    [InlineData("U6JG-0001", false, false)]
    public void The_designator_of_nine_characters_and_the_shorter_one_of_tools_in_a_box(string mark, bool isNine, bool isInABox)
        => Assert.Equal((isNine, isInABox, true), (Nine.Accepts(mark), InABox.Accepts(mark), MarkFormat.Any.Accepts(mark)));

    [Fact]
    public void A_list_is_checked_line_by_line_alternates_too_and_a_mark_is_asked_for_only_where_the_site_does()
    {
        var signed = new Signature { By = new PersonId("S"), At = World.Start };
        var manifest = new KitManifest(new KitId("BOX"), 1, "invented box", World.Start, signed,
        [
            new ToolLine { Number = 1, Tool = Of("A", "U6JG1"), Alternates = [Of("B", "X1")] },
            new ToolLine { Number = 2, Tool = Of("C", "17") },
            new ToolLine { Number = 4, Tool = Of("D", null) },
            new CountedLine { Number = 5, Description = "rags", Quantity = new Quantity(6, Unit.Each) },
        ]);

        Assert.Empty(MarkFormat.Any.Check(manifest));
        Assert.Equal(["$.lines[0] manifest.mark-format 1", "$.lines[1] manifest.mark-format 2"], Issues(InABox));
        Assert.Equal(["$.lines[0] manifest.mark-format 1", "$.lines[1] manifest.mark-format 2", "$.lines[2] manifest.no-mark 4"], Issues(InABox with { IsRequired = true }));

        IEnumerable<string> Issues(MarkFormat form) => form.Check(manifest).Select(static issue => $"{issue.Place} {issue.Rule} {issue.LineNumber}");
    }

    [Fact]
    public void A_list_that_does_not_follow_the_form_is_told_once_and_no_conclusion_changes()
    {
        ReconciliationResult plain = new World().ReadAllBut().CountAll().Reconcile();
        ReconciliationResult told = new World { Policy = new ReconciliationPolicy { Marks = InABox } }.ReadAllBut().CountAll().Reconcile();

        Assert.DoesNotContain(plain.Findings, static finding => finding.Code == ReconciliationReasons.FindingMarkFormat.Code);
        Finding finding = Assert.Single(told.Findings, static finding => finding.Code == ReconciliationReasons.FindingMarkFormat.Code);
        Assert.Equal(Enumerable.Range(1, 13), finding.LineNumbers);
        Assert.Equal(plain.Lines.Select(static line => line.State), told.Lines.Select(static line => line.State));
        Assert.NotEqual(plain.PolicyDigest, told.PolicyDigest);
    }

    [Fact]
    public void The_part_of_the_policy_is_read_with_its_places_and_a_least_length_above_the_greatest_is_refused()
    {
        SitePolicy policy = SitePolicy.Parse("""{ "schema": "toolledger/site-policy/1", "marks": { "minLength": 5, "maxLength": 9, "characters": "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789", "beginnings": ["U6JG"] } }"""u8);
        Assert.Equal(InABox, policy.Marks);
        Assert.NotEqual(SitePolicy.Default.Digest, policy.Digest);

        Assert.False(SitePolicy.TryParse("""{ "schema": "toolledger/site-policy/1", "marks": { "minLength": 9, "maxLength": 5, "pattern": "U6JG.*" } }"""u8, out _, out IReadOnlyList<RecordIssue> issues));
        Assert.Equal(["$.marks.maxLength record.out-of-range", "$.marks record.unknown-member"], issues.Select(static issue => $"{issue.Place} {issue.Rule}"));
        Assert.Throws<ArgumentOutOfRangeException>(static () => new MarkFormat { MaxLength = 33 });
        Assert.Throws<ArgumentException>(static () => new MarkFormat { Beginnings = [""] });
    }

    /// <summary>A narrower form accepts no mark that a wider one refuses.</summary>
    [Property(MaxTest = 1000)]
    public bool Narrowing_a_form_accepts_nothing_more(string? text, byte least, byte most)
    {
        string mark = string.IsNullOrEmpty(text) ? "U6JG1" : text.Length > 32 ? text[..32] : text;
        MarkFormat form = new() { MinLength = 1 + (least % 32), MaxLength = 1 + (most % 32) };
        return (!(form with { Characters = LettersAndDigits }).Accepts(mark) || form.Accepts(mark))
            && (!(form with { Beginnings = ["U6JG", "B"] }).Accepts(mark) || form.Accepts(mark))
            && form.Accepts(mark) == (mark.Length >= form.MinLength && mark.Length <= form.MaxLength);
    }

    private static Tool Of(string id, string? mark) => new() { Id = new ToolId(id), Description = "tool " + id, Mark = mark };
}
