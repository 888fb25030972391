using System;
using System.IO;
using System.Linq;
using System.Text.RegularExpressions;
using ToolLedger.Holds;
using ToolLedger.Ledger;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Reports;
using ToolLedger.Tests.Architecture;
using ToolLedger.Tests.Reconciliation;
using ToolLedger.Tools;
using Xunit;
using static ToolLedger.Tests.Reports.WalkedShift;

namespace ToolLedger.Tests.Reports;

/// <summary>One whole shift, and every report about it compared with a text that was read through by a person.</summary>
public sealed partial class WalkedShiftTests
{
    private static readonly WalkedShift Shift = new();


    [Fact]
    public void The_shift_ends_as_the_tables_say()
    {
        Assert.Equal(["R-0: hold.not-found", "R-1: hold.not-entitled, hold.declared-it, hold.not-told-found", "TI-0: custody.signed-it-out"], Shift.Refused);
        Assert.Equal((LineState.NotRead, KitState.Open), (Shift.AtShiftEnd.Lines[6].State, Shift.AtShiftEnd.Kit.State));
        Assert.Equal((LineState.Accounted, AccountingBasis.Record), (Shift.AtShiftEnd.Lines[7].State, Shift.AtShiftEnd.Lines[7].Basis));
        Assert.Equal((LineState.Accounted, AccountingBasis.Read), (Shift.AtShiftEnd.Lines[4].State, Shift.AtShiftEnd.Lines[4].Basis));
        LedgerState now = Shift.Book.Now;
        Assert.True(now.Holds.Find(new EntryId("M-1"), At(17, 9))!.IsHeld);
        Assert.False(now.Holds.Find(new EntryId("M-1"), At(17, 10))!.IsHeld);
        Assert.False(now.Custody.HolderOf(World.K1, At(18)).IsPerson);
        Assert.Equal(["S-1"], now.Findings.Where(finding => finding.Reason.Kind == LedgerRules.FindingContradicted).Select(finding => finding.Entry.Value));
    }

    // The stored text was read through line by line; whoever changes it reads it through again.
    [Fact]
    public void The_reports_of_the_shift_are_those_that_were_reviewed()
    {
        string actual = Masked(string.Join("\n",
            new ShiftReport(new ShiftReportInput { Results = [Shift.AtShiftEnd], MadeAt = At(16, 10), Ledger = Shift.Book.AsKnownAt(At(16, 10)), Calendar = Calendar }).ToText(),
            Of(At(16, 30)).ExposureByJob().ToText(),
            Of(At(16, 50)).OpenHolds().ToText(),
            Of(At(18)).OpenHolds().ToText(),
            Of(At(18)).ContradictedSignOffs().ToText(),
            Of(At(18)).CustodyOf(new ToolId("T8")).ToText(),
            Of(At(18)).SignOffSheet(Shift.SignedAtShiftEnd).ToText()));
        string file = Path.Combine(House.RootFolder(), "tests", "ToolLedger.Tests", "Reports", "walked-shift.txt");
        string expected = File.Exists(file) ? File.ReadAllText(file).ReplaceLineEndings("\n") : "";
        if (!expected.Equals(actual, StringComparison.Ordinal))
        {
            string aside = Path.Combine(House.RootFolder(), "artifacts", "walked-shift.txt");
            Directory.CreateDirectory(Path.GetDirectoryName(aside)!);
            File.WriteAllText(aside, actual);
        }

        Assert.True(expected.Equals(actual, StringComparison.Ordinal), "The reports differ from tests/ToolLedger.Tests/Reports/walked-shift.txt. Read artifacts/walked-shift.txt through; if it is right, copy it there.");
    }

    // A sheet of paper holds about 66 lines of 100 columns at six lines to the inch.
    [Fact]
    public void The_sheet_to_sign_is_one_page() =>
        Assert.InRange(Of(At(18)).SignOffSheet(Shift.SignedAtShiftEnd).ToText().Count(one => one == '\n'), 10, 66);

    [Fact]
    public void Every_page_carries_all_cautions_and_escapes_what_came_in()
    {
        LedgerPage[] pages =
        [
            Of(At(16, 30)).ExposureByJob(), Of(At(16, 50)).OpenHolds(), Of(At(18)).ContradictedSignOffs(), Of(At(18)).CustodyOf(new ToolId("T|8")), Of(At(18)).SignOffSheet(Shift.SignedAtShiftEnd),
        ];
        foreach (LedgerPage page in pages)
        {
            Assert.All(ReportCautions.All, caution => Assert.Contains(caution.Sentence[..20], page.ToText(400), StringComparison.Ordinal));
            Assert.All(ReportCautions.All, caution => Assert.Contains(caution.Sentence.Replace("\"", "", StringComparison.Ordinal)[..15], page.ToMarkdown().Replace("\"", "", StringComparison.Ordinal).Replace("\\", "", StringComparison.Ordinal), StringComparison.Ordinal));
        }

        Assert.Contains("T\\|8", pages[3].ToMarkdown(), StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => pages[0].ToText(39));
    }

    // Two ways to the same ledger, one through its stored lines, give the same pages.
    [Fact]
    public void The_pages_follow_from_the_stored_lines_alone()
    {
        byte[] lines = ToolLedger.Interchange.LedgerFile.ToJsonLines(Shift.Book.Entries);
        LedgerState read = new LedgerBook(Shift.Settings, ToolLedger.Interchange.LedgerFile.JsonLines(lines)).Now;

        Assert.Equal(Of(At(16, 50)).OpenHolds().ToText(), new LedgerReport(read, At(16, 50), Calendar).OpenHolds().ToText());
        Assert.Equal(Of(At(18)).CustodyOf(new ToolId("T8")).ToText(), new LedgerReport(read, At(18), Calendar).CustodyOf(new ToolId("T8")).ToText());
    }

    // Opened without its manifests, nothing takes effect: then no page may look as if nothing had happened.
    [Fact]
    public void A_page_of_a_ledger_whose_entries_take_no_effect_says_so()
    {
        LedgerState without = new LedgerBook(new LedgerSettings { Custody = Shift.Settings.Custody, Holds = Shift.Settings.Holds }, Shift.Book.Entries).Now;
        string page = new LedgerReport(without, At(18), Calendar).CustodyOf(new ToolId("T8")).ToText(400);

        Assert.Contains("A person must look into these first", page, StringComparison.Ordinal);
        Assert.Contains("No manifest of kit K1 is known.", page, StringComparison.Ordinal);
    }

    // A sign-off that left lines open, and no entry that tells where the kit was: the lines are named, and the page does not say that nothing is open.
    [Fact]
    public void An_open_line_of_which_nothing_is_on_record_stands_on_the_page_of_exposure()
    {
        World world = new World().ReadAllBut("T9").CountAll();
        var book = new LedgerBook(new LedgerSettings { Kits = world.Input().Kits });
        var signed = SignedReconciliation.Of(new EntryId("S-1"), world.Reconcile(), new Signature { By = World.Q, At = world.AsOf });
        Assert.Equal(AppendOutcome.Appended, book.Append(signed, world.AsOf, out _));
        string page = new LedgerReport(book.Now, world.AsOf, Calendar).ExposureByJob().ToText(400);

        Assert.Contains("NOT ON RECORD", page, StringComparison.Ordinal);
        Assert.Contains("kit K1 line 9 (", page, StringComparison.Ordinal);
        Assert.DoesNotContain("No sign-off on record left a line open.", page, StringComparison.Ordinal);
    }

    // Whoever declares a tool missing need not know of which kit it is; the report of its kit tells the hold all the same, and that of another tool does not.
    [Theory]
    [InlineData("T9", true)]
    [InlineData("X9", false)]
    public void A_hold_declared_without_a_kit_stands_in_the_report_of_the_kit_of_its_tool(string tool, bool isTold)
    {
        World world = new World().ReadAllBut("T9").CountAll();
        var book = new LedgerBook(new LedgerSettings { Kits = world.Input().Kits });
        Assert.Equal(AppendOutcome.Appended, book.Append(
            new MissingDeclaration { Id = new EntryId("M-9"), At = world.AsOf, By = World.P, Description = "the tool nobody finds", Tool = new ToolId(tool) }, world.AsOf, out _));
        string report = new ShiftReport(new ShiftReportInput { Results = [world.Reconcile()], MadeAt = world.AsOf, Ledger = book.Now, Calendar = Calendar }).ToText(400);

        Assert.Equal(isTold, report.Contains("the tool nobody finds", StringComparison.Ordinal));
    }

    [Fact]
    public void The_page_of_exposure_names_the_holds_that_stand_beside_it()
    {
        Assert.Contains("Holds stand besides: M-1.", Of(At(16, 50)).ExposureByJob().ToText(400), StringComparison.Ordinal);
        Assert.DoesNotContain("Holds stand besides", Of(At(18)).ExposureByJob().ToText(400), StringComparison.Ordinal);
    }

    // Digests change with every new setting of a policy; what they cover is tested elsewhere.
    private static string Masked(string text) => DigestOrVersion().Replace(text, "(digest)");

    private static LedgerReport Of(DateTimeOffset at) => new(Shift.Book.Now, at, Calendar);

    private static ToolLedger.Reads.SiteCalendar Calendar { get; } = new("invented site", TimeSpan.FromHours(1), []);

    [GeneratedRegex(@"\b[0-9a-f]{12}\b|\b[0-9]+\.[0-9]+\.[0-9]+(-[a-z0-9.]+)?(?=\.?$)", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant | RegexOptions.Multiline, 1000)]
    private static partial Regex DigestOrVersion();
}
