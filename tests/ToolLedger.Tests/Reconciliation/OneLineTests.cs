using System;
using System.Linq;
using System.Reflection;
using ToolLedger.Calibration;
using ToolLedger.Interchange;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Ledger;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tools;
using ToolLedger.Trials;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>What a log, a debugger and a failed test print of the central records is one line that says what they are.</summary>
public sealed class OneLineTests
{
    [Fact]
    public void A_result_says_kit_revision_instant_conclusion_and_counts_of_lines_by_state()
    {
        World world = Twelve();
        ReconciliationResult result = world.Reconcile();

        Assert.Equal($"kit K1 revision 3 as of {RecordTime.ToText(world.AsOf)}: {result.Kit}", result.ToString());
        Assert.StartsWith("Open: ", result.Kit.ToString(), StringComparison.Ordinal);
        Assert.Equal(result.Lines.Count, result.Kit.ToString()["Open: ".Length..].Split(", ").Sum(static part => int.Parse(part[..part.IndexOf(' ', StringComparison.Ordinal)], System.Globalization.CultureInfo.InvariantCulture)));
    }

    [Fact]
    public void At_a_stated_risk_a_result_says_the_risk_and_whether_it_is_within_the_limit()
    {
        World world = Twelve();
        world.Policy = new ReconciliationPolicy { Presence = new StatedRiskPolicy() };

        ReconciliationResult result = world.Reconcile();

        Assert.EndsWith("; " + result.Kit.Risk, result.ToString(), StringComparison.Ordinal);
        Assert.Matches("^risk (less than )?1 in [0-9,]+, at most 1 in [0-9,]+, of [0-9]+ lines?$", result.Kit.Risk!.ToString());
    }

    [Fact]
    public void A_session_says_its_kits_station_times_health_and_counts()
    {
        ReadSession session = Twelve().Session("S1", [World.K1]);

        Assert.Equal($"session S1 of kit K1 at station {session.Presentation.Station.Id} from {RecordTime.ToText(session.From)} to {RecordTime.ToText(session.To)}: Valid, {session.TagCount} tags in {session.ReadCount} reads", session.ToString());
    }

    [Fact]
    public void A_session_of_very_many_kits_says_a_few_of_them()
    {
        var world = new World();
        ReadSession session = world.Session("S1", [.. Enumerable.Range(1, 12).Select(static number => new KitId("B" + number.ToString(System.Globalization.CultureInfo.InvariantCulture)))]);

        Assert.Contains("of kits B1, B2, B3, B4, B5 and 7 more at station", session.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_verdict_says_how_high_the_line_may_be_and_why()
    {
        var why = new Reason(new ReasonKind("site.why", "it was dropped"));
        Verdict withheld = Verdict.Withhold(LineState.Weak, why, new NextStep(NextStepKind.SightTool, why));

        Assert.Equal("no objection", Verdict.NoObjection.ToString());
        Assert.Equal("no higher than weak: it was dropped", withheld.ToString());
        Assert.Equal("no higher than weak: it was dropped (and finds: it was dropped)", withheld.WithFindings(new Finding(FindingLevel.Line, why)).ToString());
    }

    // The name of the type, which is what a class without a text of its own prints, helps nobody.
    [Fact]
    public void No_central_record_prints_as_the_name_of_its_type_and_none_in_more_than_one_line()
    {
        World world = Twelve();
        ReadSession session = world.Session("S1", [World.K1]);
        ReconciliationInput input = world.Input(session);
        ReconciliationResult result = world.Reconcile(session);
        LineConclusion read = result.Lines.First(static line => line.Evidence.Best is not null);
        object[] records =
        [
            result, result.Kit, result.Manifest, read, read.Line, result.Lines[^1], result.Reads[0], result.Sessions[0], session, session.Presentation, session.Health, session.Tags.First(),
            read.Evidence.Best!, input, input.Kits, input.Tags, input.Tags.Bindings[0], read.Line.Tool!, Verdict.NoObjection, result.Inputs[0],
            new PresenceJudgement(PresenceState.Weak, [new Reason(PresenceReasons.AdviceSighting)]),
        ];

        foreach (object record in records)
        {
            string said = record.ToString()!;
            Assert.False(said.Contains("ToolLedger.", StringComparison.Ordinal), said);
            Assert.DoesNotContain('\n', said);
            Assert.InRange(said.Length, 5, 400);
        }
    }

    // Counting is all they do: no digest is worked out, nothing is replayed.
    [Fact]
    public void Registers_sheets_lists_totals_trials_and_ledgers_say_what_they_are()
    {
        DateTimeOffset at = World.Start;
        ToolId tool = new("T1");
        TagId tag = World.TagOf("T1");
        World world = Twelve().Sight("T1", "m", World.K1, at).Count(13, 9, "each", at);
        KitManifest manifest = world.K1Revision3();
        var tags = new TagRegister(world.Bindings);
        var trial = new TagTrial(tag, tool, 40, 39, at) { IsInFullKit = true, Setting = "wet" };
        var ledger = new LedgerBook(new LedgerSettings { Kits = world.Kits() });
        var entries = new InventoryEntries { Sightings = world.Sightings, Counts = world.Counts, Signatures = [new Signature { By = World.P, At = at }, new Signature { By = World.Q, At = at }] };
        var sheet = new InventorySheet(entries);
        KitQualification qualification = KitQualification.Of(manifest, tags, [trial], at);
        ManifestTotals totals = ManifestTotals.Of(manifest, world.Kits(), tags, at);
        MasterList list = MasterListFile.ReadCsv("no\n1\n"u8.ToArray(), new MasterListOptions { Columns = new MasterListColumns { Line = "no" } });
        SignedReconciliation signed = SignedReconciliation.Of(new EntryId("S-1"), world.Reconcile(), new Signature { By = World.P, At = world.AsOf }, new Signature { By = World.Q, At = world.AsOf });

        Assert.Equal("1 sighting, 1 count, 2 signatures", entries.ToString());
        Assert.Equal(entries.ToString(), sheet.ToString());
        Assert.Equal("nothing said", InventorySheet.Empty.ToString());
        Assert.Equal($"tool T1: mark m read by {world.Sightings[0].By} at {RecordTime.ToText(at)}, {world.Sightings[0].Where}, in kit K1", world.Sightings[0].ToString());
        Assert.Equal("0 calibration records and 0 events of 0 tools", CalibrationRegister.Empty.ToString());
        Assert.Equal("ledger of 0 entries, 0 sign-offs among them", ledger.ToString());
        Assert.Equal("0 sign-offs, 0 amendments; 0 findings to look into", ledger.Now.ToString());
        Assert.Equal($"T1, {tag}: read in 39 of 40 presentations, in its full kit, wet, at {RecordTime.ToText(at)}", trial.ToString());
        Assert.StartsWith("0 lines understood, ", list.ToString(), StringComparison.Ordinal);
        Assert.Equal($"{manifest}: {totals.Kit}", totals.ToString());
        Assert.StartsWith($"{totals.Kit.LineCount} lines, ", totals.Kit.ToString(), StringComparison.Ordinal);
        Assert.Equal($"{manifest}: {qualification.Reason}", qualification.ToString());
        Assert.StartsWith(qualification.Lines[0].Line.ToString(), qualification.Lines[0].ToString(), StringComparison.Ordinal);
        Assert.Equal($"signed-reconciliation S-1 of kit K1 revision 3 as of {RecordTime.ToText(world.AsOf)}: {signed.State}; signed by P, Q", signed.ToString());
        Assert.All(
            [entries, sheet, world.Sightings[0], CalibrationRegister.Empty, ledger, ledger.Now, trial, list, totals, totals.Kit, qualification, qualification.Lines[0], signed],
            static (object record) => Assert.Matches("^(?!ToolLedger\\.)[^\\r\\n]{5,400}$", record.ToString()!));

        var digest = (Lazy<Digest>)typeof(InventorySheet).GetFields(BindingFlags.Instance | BindingFlags.NonPublic).Single(static field => field.FieldType == typeof(Lazy<Digest>)).GetValue(sheet)!;
        Assert.False(digest.IsValueCreated);
    }

    [Fact]
    public void A_finding_says_its_lines_and_the_session_that_its_sentence_does_not_name()
    {
        var why = new Reason(new ReasonKind("site.why", "it was dropped in {session}"), ("session", "S2"));

        Assert.Equal("line 3, session S1: it was dropped in S2", new Finding(FindingLevel.Line, why) { LineNumbers = [3], Session = new SessionId("S1") }.ToString());
        Assert.Equal("it was dropped in S2", new Finding(FindingLevel.Session, why) { Session = new SessionId("S2") }.ToString());
        Assert.Equal("lines 1, 2, 3, 4, 5 and 2 more: it was dropped in S2", new Finding(FindingLevel.Kit, why) { LineNumbers = [1, 2, 3, 4, 5, 6, 7] }.ToString());
    }

    // A look into a variable must not explain every read and digest every register.
    [Fact]
    public void Printing_a_result_works_nothing_out()
    {
        World world = Twelve();
        ReconciliationResult result = world.Reconcile();
        FieldInfo[] lazy = [.. typeof(ReconciliationResult).GetFields(BindingFlags.Instance | BindingFlags.NonPublic).Where(static field => field.FieldType.IsGenericType && field.FieldType.GetGenericTypeDefinition() == typeof(Lazy<>))];

        _ = result.ToString();

        Assert.Contains(lazy, field => field.GetValue(result) is not null);
        Assert.All(lazy, field => Assert.False(field.GetValue(result) is { } value && (bool)value.GetType().GetProperty("IsValueCreated")!.GetValue(value)!, field.Name));
    }

    private static World Twelve()
    {
        var world = new World();
        world.ReadWell("T1", "T2", "T3");
        return world;
    }
}
