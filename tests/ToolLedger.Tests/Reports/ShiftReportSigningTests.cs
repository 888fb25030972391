using System;
using System.Linq;
using System.Text.Json;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Policies;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Reports;
using ToolLedger.Tests.Reconciliation;
using Xunit;
using static ToolLedger.Tests.Reports.Printed;

namespace ToolLedger.Tests.Reports;

/// <summary>Who signed, what came later, what is exposed, and the gate before operation, in print.</summary>
public sealed class ShiftReportSigningTests
{
    [Fact]
    public void An_opening_after_the_signature_shows_at_the_gate_and_among_what_changed()
    {
        TurbineShift shift = new() { NotRead = [], Weak = [], OpenedAt = World.End.AddSeconds(110) };
        ReconciliationResult result = shift.Reconcile();
        GateAnswer gate = Gate.Ask(result, result.AsOf);
        string text = Unwrapped(new ShiftReport(new ShiftReportInput { Results = [result], MadeAt = World.End, Gates = [gate] }).ToText());

        Assert.Equal(KitState.Complete, result.Kit.State);
        Assert.Contains("Before operation: NOT SATISFIED at 15:57:30+01:00: the kit was opened at", text, StringComparison.Ordinal);
        Assert.Contains("Noticed, all lines: the kit was opened at 15:57:20+01:00 by P-118", text, StringComparison.Ordinal);
        Assert.Equal(1, Count(text, "may no longer hold"));
        Assert.Contains("OPENED kit B-07 at 15:57:20+01:00 by P-118, nacelle", text, StringComparison.Ordinal);
        Assert.Contains("Later than the first signature, 15:57:10+01:00, so not covered by it: - opened: kit B-07 at 15:57:20+01:00 by P-118, nacelle", text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_came_after_the_signature_is_listed_and_the_item_on_no_list_is_told_with_its_exposure()
    {
        World world = new World().ReadAllBut().CountAll().CountPieces("T10", 1);
        world.AsOf = World.End.AddMinutes(4);
        world.Signatures.Add(new Signature { By = World.Q, At = World.End.AddSeconds(10), Role = new Role("supervisor") });
        world.UnlistedItems.Add(new UnlistedItemReport
        {
            Description = "phone",
            By = World.P,
            At = World.End.AddMinutes(3),
            LastSeenAt = World.Start,
            LastSeenWhere = new Place("wheel bay"),
            TouchedSince = [new Place("aircraft A"), new Place("aircraft B")],
        });
        ReconciliationResult result = world.Reconcile(world.Session(), world.Session("S2", [World.K1], from: World.Start.AddMinutes(2)));
        string text = Unwrapped(new ShiftReport(new ShiftReportInput { Results = [result], MadeAt = World.End }).ToText());
        string exposed = Between(text, "5. Which equipment", "6. Who may sign"), changed = Between(text, "8. What changed", "9. What was read");

        Assert.Contains("ON NO LIST \"phone\", reported by P at 14:58:30+00:00; last seen 14:55:00+00:00, wheel bay; touched since: aircraft A, aircraft B.", exposed, StringComparison.Ordinal);
        Assert.Contains("Later than the first signature, 14:55:40+00:00", changed, StringComparison.Ordinal);
        Assert.Contains("- session S2 ended at 14:57:30+00:00", changed, StringComparison.Ordinal);
        Assert.DoesNotContain("session S1", changed, StringComparison.Ordinal);
        Assert.Contains("- reported gone: \"phone\"", changed, StringComparison.Ordinal);
    }

    // Nothing was presented to a reader, so a shortage may be signed after the first person has signed; that person has not seen it.
    [Fact]
    public void A_shortage_signed_after_the_first_signature_is_named_as_a_change()
    {
        var world = new World();
        world.Signatures.Add(new Signature { By = World.Q, At = World.End.AddSeconds(10) });
        world.Annotations.Add(new Annotation
        {
            Kit = World.K1,
            LineNumber = 3,
            Kind = AnnotationKind.Removed,
            Reason = "at the grinder",
            SignedBy = new Signature { By = World.P, At = World.End.AddSeconds(20) },
        });
        string text = Unwrapped(new ShiftReport(new ShiftReportInput { Results = [world.Reconcile([])], MadeAt = World.End }).ToText());

        Assert.Contains("- line 3 removed on record at 14:55:50+00:00 by P", Between(text, "8. What changed", "9. What was read"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_gate_that_is_satisfied_says_so_in_words_and_in_the_json()
    {
        ReconciliationResult result = new TurbineShift { NotRead = [], Weak = [] }.Reconcile();
        var report = new ShiftReport(new ShiftReportInput { Results = [result], MadeAt = World.End, Gates = [Gate.Ask(result, result.AsOf)] });
        using JsonDocument document = JsonDocument.Parse(report.ToJson());

        StoredSchema.AssertAccepts("shift-report", report.ToJson());
        Assert.Contains("Before operation: SATISFIED", report.ToText(), StringComparison.Ordinal);
        Assert.True(document.RootElement.GetProperty("kits")[0].GetProperty("beforeOperation").GetProperty("isSatisfied").GetBoolean());
    }

    [Fact]
    public void A_gate_of_another_kit_or_answered_twice_is_refused()
    {
        ReconciliationResult result = new TurbineShift().Reconcile(), other = new TurbineShift { Kit = new KitId("B-08") }.Reconcile();
        GateAnswer own = Gate.Ask(result, result.AsOf), foreign = Gate.Ask(other, other.AsOf);

        Assert.Throws<ArgumentException>(() => new ShiftReport(new ShiftReportInput { Results = [result], MadeAt = World.End, Gates = [foreign] }));
        Assert.Throws<ArgumentException>(() => new ShiftReport(new ShiftReportInput { Results = [result], MadeAt = World.End, Gates = [own, own] }));
    }

    [Fact]
    public void Who_may_sign_follows_the_policy_and_one_person_under_two_spellings_is_one()
    {
        var strict = new TurbineShift
        {
            Policy = new SitePolicy
            {
                Calendar = TurbineShift.Yard,
                Inventory = new InventoryPolicy { RolesThatMaySign = [new Role("supervisor"), new Role("second person")], CounterMaySign = false },
            },
        };
        string usual = Unwrapped(new TurbineShift { Signers = ["P-204", "p 204"] }.Report().ToText());
        string asked = Unwrapped(strict.Report().ToText());

        Assert.Contains("No: 1 person has signed.", usual, StringComparison.Ordinal);
        Assert.Contains("Yes: 2 different persons have signed.", Unwrapped(new TurbineShift { Signers = ["P-204", "P-300"] }.Report().ToText()), StringComparison.Ordinal);
        Assert.Contains("May sign: supervisor, second person, but nobody for what he or she counted", asked, StringComparison.Ordinal);
        Assert.Contains("No: 0 different persons have signed.", asked, StringComparison.Ordinal);
        Assert.Contains("No signature counts for this kit", asked, StringComparison.Ordinal);
    }

    // "Yes: 2 have signed" above open lines must not read as if that settled them.
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Signatures_under_open_lines_are_said_to_settle_none_of_them(bool isOpen)
    {
        TurbineShift shift = isOpen ? new() { Signers = ["P-204", "P-300"] } : new() { Signers = ["P-204", "P-300"], NotRead = [], Weak = [] };
        string said = "Yes: 2 different persons have signed. Signatures settle no open line: 2 are open. Took part:";
        ShiftReport report = shift.Report();

        Assert.Equal(isOpen, Unwrapped(report.ToText()).Contains(said, StringComparison.Ordinal));
        Assert.Equal(isOpen, report.ToMarkdown().Contains(said, StringComparison.Ordinal));
        Assert.Equal(isOpen, report.ToHtml().Contains(said, StringComparison.Ordinal));
        Assert.DoesNotContain("Signatures settle", new TurbineShift { Signers = [] }.Report().ToText(), StringComparison.Ordinal);
    }

    // Signed at 100 s after the session's end. An opening at the very instant of a signature leaves open which came first.
    [Theory]
    [InlineData(110, true)]
    [InlineData(100, true)]
    [InlineData(90, false)]
    public void Signatures_made_before_the_kit_was_opened_are_said_not_to_speak_for_what_happened_since(int openedAfter, bool isOlder)
    {
        TurbineShift shift = new() { NotRead = [], Weak = [], Signers = ["P-204", "P-300"], OpenedAt = World.End.AddSeconds(openedAfter) };
        string said = "2 of these signatures were made no later than the opening of kit B-07 at 15:57:";
        ShiftReport report = shift.Report();
        string text = Unwrapped(report.ToText()), section = Between(text, "6. Who may sign", "7. Calibration");

        Assert.Equal(isOlder, section.Contains(said, StringComparison.Ordinal));
        Assert.Equal(isOlder, section.Contains("and do not speak for what happened since.", StringComparison.Ordinal));
        Assert.Equal(isOlder, report.ToMarkdown().Contains(said, StringComparison.Ordinal));
        Assert.Equal(isOlder, report.ToHtml().Contains(said, StringComparison.Ordinal));

        // Two have to sign again, so there is room for two.
        Assert.Equal(isOlder ? 2 : 1, Count(section, "Name or number"));
    }

    // A name that looks like a time is a name: it is printed whole.

    [Fact]
    public void A_line_that_was_read_names_its_sessions_their_station_and_the_last_look()
    {
        World world = new World { AsOf = World.End.AddMinutes(8) }.ReadAllBut().CountAll();
        ReconciliationResult result = world.Reconcile(world.Session(), world.Session("S2", [World.K1], World.Later(world, 5), World.Start.AddMinutes(5)));
        Assert.Equal(["S1", "S2"], result.Lines[0].Evidence.Sessions.Select(static session => session.Value));
        Assert.Empty(result.Lines[14].Evidence.Sessions);

        var report = new ShiftReport(new ShiftReportInput { Results = [result], MadeAt = result.AsOf });
        Assert.Contains("tool 1 [K1-1]: 8 looks, 2 antennas, 2 passes, last 15:00:11", report.ToText(400), StringComparison.Ordinal);
        Assert.Contains("Read in S1 at R1, S2 at R1.", report.ToText(400), StringComparison.Ordinal);
        byte[] json = report.ToJson();
        StoredSchema.AssertAccepts("shift-report", json);
        JsonElement line = Kit(json).GetProperty("lines")[0].GetProperty("evidence");
        Assert.Equal(["S1", "S2"], line.GetProperty("sessions").EnumerateArray().Select(static session => session.GetString()));
    }

    [Fact]
    public void Lines_that_were_read_in_different_sessions_say_each_in_which()
    {
        World world = new World { AsOf = World.End.AddMinutes(8) }.ReadAllBut().CountAll();
        ReadSession first = world.Session("S1", [World.K1], world.ControlReads().Concat(world.Reads.Where(static read => read.Tag != World.TagOf("T1"))));
        ReconciliationResult result = world.Reconcile(first, world.Session("S2", [World.K1], World.Later(world, 5), World.Start.AddMinutes(5)));
        string text = new ShiftReport(new ShiftReportInput { Results = [result], MadeAt = result.AsOf }).ToText(400);
        Assert.Contains("tool 1 [K1-1]: 4 looks, 2 antennas, last 15:00:11+00:00, in S2 at R1", text, StringComparison.Ordinal);
        Assert.Contains("tool 2 [K1-2]: 8 looks, 2 antennas, 2 passes, last 15:00:11+00:00, in S1 at R1, S2 at R1", text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_job_on_which_a_consumable_was_used_is_told_among_what_is_exposed()
    {
        World world = new World().ReadAllBut("T7").CountAll();
        world.MoreLines.Add(new ConsumableLine { Number = 16, Description = "pins", Quantity = new Quantity(20, Unit.Each) });
        world.Count(16, 13, "each").Use(16, "aircraft B, J-4411", 5, "each", World.Start.AddHours(-3)).Use(16, "aircraft B, J-4411", 7, "each", World.Start.AddHours(-2))
            .Use(16, "aircraft C, J-4412", 0, "each", World.Start.AddHours(-1)).Use(16, "aircraft A, J-4001", 9, "each", World.Start.AddDays(-2));
        ReconciliationResult result = world.Reconcile();
        Assert.Equal(["aircraft C, J-4412", "aircraft B, J-4411"], result.JobRecords.Select(static use => use.Job));

        var report = new ShiftReport(new ShiftReportInput { Results = [result], MadeAt = result.AsOf });
        string text = report.ToText(400);
        int section = text.IndexOf("5. Which equipment is exposed", StringComparison.Ordinal);
        Assert.InRange(text.IndexOf("job aircraft B, J-4411: 7 each used and 0 each scrapped of line 16 of kit K1, recorded by P at 12:55:00", StringComparison.Ordinal), section, text.IndexOf("6. Who may sign", StringComparison.Ordinal));
        byte[] json = report.ToJson();
        StoredSchema.AssertAccepts("shift-report", json);
        JsonElement exposure = Kit(json).GetProperty("exposure");
        Assert.Equal(7, exposure.GetProperty("jobs")[1].GetProperty("used").GetDecimal());
        Assert.Equal("7", Assert.Single(exposure.GetProperty("openLines").EnumerateArray()).GetProperty("line").GetString());
        Assert.True(exposure.TryGetProperty("settledSince", out _));
    }

    [Fact]
    public void The_json_tells_what_is_later_than_the_first_signature_as_the_text_does()
    {
        World world = new World().ReadAllBut().CountAll().Open(World.End.AddSeconds(90));
        Assert.Empty(Changes(world, out string? nobody));
        Assert.Null(nobody);

        world.Signatures.Add(new Signature { By = World.Q, At = World.End.AddSeconds(60) });
        JsonElement later = Assert.Single(Changes(world, out string? signedAt));
        Assert.Equal("report.changed-opening", later.GetProperty("code").GetString());
        Assert.Equal("2026-03-02T14:56:30Z", signedAt);
    }

    private static JsonElement[] Changes(World world, out string? signedAt)
    {
        ReconciliationResult result = world.Reconcile();
        byte[] json = new ShiftReport(new ShiftReportInput { Results = [result], MadeAt = result.AsOf }).ToJson();
        StoredSchema.AssertAccepts("shift-report", json);
        JsonElement changes = Kit(json).GetProperty("changes");
        signedAt = changes.TryGetProperty("signedAt", out JsonElement at) ? at.GetString() : null;
        return [.. changes.GetProperty("later").EnumerateArray()];
    }

    private static JsonElement Kit(byte[] json) => JsonDocument.Parse(json).RootElement.GetProperty("kits")[0];
}
