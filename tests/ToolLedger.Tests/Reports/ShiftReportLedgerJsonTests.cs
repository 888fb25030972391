using System;
using System.Linq;
using System.Text.Json;
using FsCheck.Xunit;
using ToolLedger.Holds;
using ToolLedger.Ledger;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Reports;
using ToolLedger.Tests.Reconciliation;
using ToolLedger.Tools;
using Xunit;
using static ToolLedger.Tests.Reports.WalkedShift;

namespace ToolLedger.Tests.Reports;

/// <summary>The JSON form of a shift report tells of a ledger what the fifth section of the text tells.</summary>
public sealed class ShiftReportLedgerJsonTests
{
    private static readonly WalkedShift Shift = new();

    // The text of the same report was read through by a person: walked-shift.txt, section 5.
    [Fact]
    public void Who_answers_and_what_each_open_line_was_near_stand_in_the_json()
    {
        JsonElement ledger = LedgerOf(Shift.Book.AsKnownAt(At(16, 10)));

        JsonElement custody = ledger.GetProperty("custody");
        Assert.Equal(("P", "2026-03-02T08:00:00+01:00"), (custody.GetProperty("holder").GetString(), custody.GetProperty("since").GetString()));
        JsonElement exposed = Assert.Single(ledger.GetProperty("exposed").EnumerateArray());
        Assert.Equal("7", Assert.Single(exposed.GetProperty("lines").EnumerateArray()).GetString());
        Assert.Equal("2026-03-02T10:04:00+01:00", exposed.GetProperty("lastAccountedFor").GetString());
        Assert.Equal(
            [("aircraft B", "J-B", "2026-03-02T10:15:00+01:00", "2026-03-02T12:00:00+01:00", "P", "V-B"), ("aircraft C", "J-C", "2026-03-02T12:30:00+01:00", "2026-03-02T15:30:00+01:00", "P", "V-C")],
            exposed.GetProperty("items").EnumerateArray().Where(static item => item.GetProperty("kind").ValueEquals("visit")).Select(static item =>
                (Text(item, "equipment"), Text(item, "job"), Text(item, "from"), Text(item, "until"), Text(item, "holder"), Text(item, "entry"))));
        Assert.Empty(ledger.GetProperty("holds").EnumerateArray());
    }

    // Given a tool declared missing at 15:25 without the name of a kit, and a time limit of 30 minutes. As of 16:00 its kit is told the hold, both clocks, what is affected, whom to tell, and that it is late.
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_hold_is_told_with_both_clocks_and_what_is_still_to_do(bool isKitNamed)
    {
        var declared = new MissingDeclaration
        {
            Id = new EntryId("M-0"),
            At = At(15, 25),
            By = World.P,
            Description = "tool 7",
            Tool = new ToolId("T7"),
            Kit = isKitNamed ? World.K1 : default,
            LineNumber = isKitNamed ? 7 : null,
        };
        DateTimeOffset asOf = Shift.AtShiftEnd.AsOf;
        LedgerState known = new LedgerBook(Shift.Settings, Shift.Book.Entries.Append(new LedgerEntry(declared, declared.At))).Now;

        JsonElement hold = Assert.Single(LedgerOf(known).GetProperty("holds").EnumerateArray());

        HoldStatus status = known.Holds.Find(declared.Id, asOf)!;
        Assert.Equal(("M-0", "tool 7", "T7", "P", "2026-03-02T15:25:00+01:00"), (Text(hold, "hold"), Text(hold, "what"), Text(hold, "tool"), Text(hold, "by"), Text(hold, "declaredAt")));
        Assert.Equal(isKitNamed ? "7" : "", Text(hold, "line"));
        Assert.Equal((asOf - At(15, 25)).TotalSeconds, hold.GetProperty("secondsSinceDeclared").GetDouble());
        Assert.Equal((asOf - At(10, 4)).TotalSeconds, hold.GetProperty("secondsSinceAccountedFor").GetDouble());
        Assert.Equal(["aircraft B", "aircraft C"], hold.GetProperty("affected").EnumerateArray().Select(static thing => Text(thing, "equipment")).Where(static name => name.Length > 0));
        Assert.Equal("quality assurance", Assert.Single(hold.GetProperty("toBeTold").EnumerateArray()).GetString());
        Assert.Equal(status.Late.Select(static reason => reason.Code), hold.GetProperty("late").EnumerateArray().Select(static reason => Text(reason, "code")));
        Assert.NotEmpty(status.Late);
        Assert.Contains("HELD", Report(known).ToText(), StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_ledger_nothing_is_said_of_custody() =>
        Assert.False(KitOf(null).GetProperty("exposure").TryGetProperty("ledger", out _));

    // Whichever entries of the shift a ledger holds: the schema holds, and every open line stands in one group of the exposed lines, in the order to chase them.
    [Property(MaxTest = 40)]
    public void Any_ledger_keeps_the_schema_and_tells_of_every_open_line(int mask)
    {
        LedgerState known = new LedgerBook(Shift.Settings, Shift.Book.Entries.Where((_, index) => ((mask >> (index % 31)) & 1) == 1)).Now;
        JsonElement kit = KitOf(known);
        JsonElement[] exposed = [.. kit.GetProperty("exposure").GetProperty("ledger").GetProperty("exposed").EnumerateArray()];

        Assert.Equal(
            kit.GetProperty("chase").EnumerateArray().Select(static line => line.GetString()).Order(StringComparer.Ordinal),
            exposed.SelectMany(static group => group.GetProperty("lines").EnumerateArray()).Select(static line => line.GetString()).Order(StringComparer.Ordinal));
        foreach (JsonElement group in exposed)
        {
            Exposure exposure = known.Exposure.Of(World.K1, group.GetProperty("lines")[0].GetString()!, Shift.AtShiftEnd.AsOf);
            Assert.Equal(exposure.Items.Count, group.GetProperty("items").GetArrayLength());
            Assert.Equal(exposure.Since is null, !group.TryGetProperty("lastAccountedFor", out _));
        }
    }

    private static JsonElement LedgerOf(LedgerState known) => KitOf(known).GetProperty("exposure").GetProperty("ledger");

    private static JsonElement KitOf(LedgerState? known)
    {
        byte[] json = Report(known).ToJson();
        StoredSchema.AssertAccepts("shift-report", json);
        using JsonDocument document = JsonDocument.Parse(json);
        return document.RootElement.GetProperty("kits")[0].Clone();
    }

    private static ShiftReport Report(LedgerState? known) => new(new ShiftReportInput
    {
        Results = [Shift.AtShiftEnd],
        MadeAt = At(16, 10),
        Ledger = known,
        Calendar = new SiteCalendar("invented site", TimeSpan.FromHours(1), []),
    });

    private static string Text(JsonElement element, string name) => element.TryGetProperty(name, out JsonElement value) ? value.GetString()! : "";
}
