using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;
using System.Text.Json;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ToolLedger.Custody;
using ToolLedger.Records;
using ToolLedger.Tests.Records;
using ToolLedger.Tests.Reports;
using ToolLedger.Tools;
using Xunit;
using static ToolLedger.Tests.Custody.CustodyScene;

namespace ToolLedger.Tests.Custody;

public sealed class CustodyLogJsonTests
{
    private const string SchemaName = "custody-log";

    /// <summary>One entry of every kind, every member set.</summary>
    internal static IReadOnlyList<CustodyEntry> OneOfEach()
    {
        Signature signed = Signed("B", At(11), "user");
        Digest digest = Digest.Of("an inventory"u8);
        return
        [
            new KitIssue
            {
                Id = new EntryId("E1"), At = At(8), By = new PersonId("C"), Role = new Role("custodian"), Witness = new PersonId("W"), Where = new Place("hatch"), Remark = "night shift",
                Kit = K1, Revision = 3, ReceivedBy = signed, Job = new JobId("J1"), Equipment = new EquipmentId("A"), ExpectedReturn = At(16), OpenLines = [2, 7], NotForMeasurement = [4], Inventory = digest,
            },
            new KitTurnIn { Id = new EntryId("E2"), At = At(16), By = new PersonId("P"), Kit = K1, AcceptedBy = signed, Inventory = digest },
            new KitTransfer
            {
                Id = new EntryId("E3"), At = At(12), By = new PersonId("P"), Kit = K1, ReceivedBy = signed, InventoriedAt = At(11), OpenLines = [7], GiverAcknowledges = [7], ReceiverAcknowledges = [7],
                Inventory = digest, Job = new JobId("J2"), Equipment = new EquipmentId("B"), ExpectedReturn = At(17),
            },
            new ToolLoan
            {
                Id = new EntryId("E4"), At = At(11), By = new PersonId("P"), Tool = new ToolId("T8"), Kit = K1, ReceivedBy = signed, Pieces = 3, ToKit = K2, Job = new JobId("J2"),
                Equipment = new EquipmentId("B"), Due = At(15), IsChit = true,
            },
            new LaboratoryReceipt { Id = new EntryId("E5"), At = At(11), By = new PersonId("P"), Tool = new ToolId("T4"), Kit = K1, ReceivedBy = signed, Pieces = 1, Due = At(23), Where = new Place("laboratory 2") },
            new ReceiptClosure { Id = new EntryId("E6"), At = At(14), By = new PersonId("B"), Receipt = new EntryId("E4"), AcceptedBy = signed, ToKit = K1 },
            new DispatchNote { Id = new EntryId("E7"), At = At(10), By = new PersonId("P"), Tool = new ToolId("T4"), Kit = K1, To = new Place("laboratory 2") },
            new PersonalItem
            {
                Id = new EntryId("E8"), At = At(8), By = new PersonId("M"), Item = "phone", Owner = new PersonId("P"), Quantity = new Quantity(1, Unit.Each), Direction = CarriedDirection.Out, IsTool = true, IsRegistered = true,
            },
            new ZoneEntry { Id = new EntryId("E9"), At = At(9), By = new PersonId("M"), Zone = new Place("Z"), Item = "T2", Quantity = new Quantity(1.5m, new Unit("spool")), Carrier = new PersonId("P"), Direction = CarriedDirection.In },
            new ZoneClosing { Id = new EntryId("E10"), At = At(9), By = new PersonId("M"), Zone = new Place("Z") },
            Visit("E11", At(8), At(10), "A"),
            new JobDeparture { Id = new EntryId("E12"), At = At(10), By = new PersonId("P"), Visit = new EntryId("E11") },
            new ToolUse
            {
                Id = new EntryId("E13"), At = At(9), By = new PersonId("P"), Tool = new ToolId("T4"), Job = new JobId("J1"), Equipment = new EquipmentId("A"), Function = "torque, clockwise",
                Value = -12.345678m, Unit = new Unit("N·m"), Until = At(9, 30),
            },
            new ToolRoomInventory { Id = new EntryId("E14"), At = At(7), By = new PersonId("S1"), IncomingBy = signed, Present = [K1, K2] },
        ];
    }

    [Fact]
    public void Every_kind_of_entry_is_in_the_example() => Assert.Equal(
        typeof(CustodyEntry).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(CustodyEntry)) && !type.IsAbstract).Select(type => type.Name).Order(StringComparer.Ordinal),
        OneOfEach().Select(entry => entry.GetType().Name).Order(StringComparer.Ordinal),
        StringComparer.Ordinal);

    [Fact]
    public void Every_kind_is_written_by_the_schema_and_read_again_member_for_member()
    {
        byte[] json = new CustodyLog(OneOfEach()).ToJson();

        StoredSchema.AssertAccepts(SchemaName, json);
        CustodyLog read = CustodyLog.Parse(json);
        Assert.Equal(json, read.ToJson());
        Assert.Equal(OneOfEach().Select(entry => entry.Digest), read.Entries.Select(entry => entry.Digest));
        Assert.All(read.Entries.Zip(OneOfEach()), pair => Assert.Equal(pair.Second.GetType(), pair.First.GetType()));
    }

    // Every member that is set above must show in the stored form, or it would be lost in silence.
    [Fact]
    public void No_member_is_forgotten()
    {
        foreach (CustodyEntry entry in OneOfEach())
        {
            using JsonDocument document = JsonDocument.Parse(entry.ToJson());
            IEnumerable<string> declared = entry.GetType().GetProperties()
                .Where(property => property.CanWrite && property.DeclaringType != typeof(RecordEntry))
                .Select(property => JsonNamingPolicy.CamelCase.ConvertName(property.Name));
            Assert.All(declared, name => Assert.True(document.RootElement.TryGetProperty(name, out _), $"{entry.Kind} lacks {name}"));
        }
    }

    [Fact]
    public void Canonical_bytes_are_sorted_and_the_same_for_the_same_fact()
    {
        CustodyEntry entry = OneOfEach()[0];

        Assert.Equal(CanonicalJson.Canonicalize(entry.ToJson()), entry.ToJson());
        Assert.Equal(OneOfEach()[0].Digest, entry.Digest);
        Assert.StartsWith("{\"at\":\"2026-03-02T08:00:00+01:00\",\"by\":\"C\"", Encoding.UTF8.GetString(entry.ToJson()), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_fault_is_told_in_one_go_with_its_place()
    {
        byte[] json = Encoding.UTF8.GetBytes("""
            { "schema": "toolledger/custody-log/1", "entries": [
              { "kind": "kit-issue", "id": "E1", "at": "2026-03-02T08:00:00", "kit": "K1", "revision": 0, "colour": "red" },
              { "kind": "kit-gift", "id": "E2", "at": "2026-03-02T08:00:00Z", "by": "P" },
              { "kind": "zone-entry", "id": "E3", "at": "2026-03-02T08:00:00Z", "by": "M", "zone": "Z", "item": "T2", "quantity": { "amount": 0, "unit": "each" }, "carrier": "P", "direction": "sideways" },
              { "kind": "kit-transfer", "id": "E4", "at": "2026-03-02T08:00:00Z", "by": "P", "kit": "K1", "openLines": [0, 7, 7.5], "inventory": "sha256:1" },
              7
            ] }
            """);

        Assert.False(CustodyLog.TryParse(json, out CustodyLog? log, out IReadOnlyList<RecordIssue> issues));
        Assert.Null(log);
        Assert.Equal(
            [
                "$.entries[0].at record.time-without-offset",
                "$.entries[0] record.missing-member",
                "$.entries[0].revision record.out-of-range",
                "$.entries[0] record.unknown-member",
                "$.entries[1].kind record.unknown-word",
                "$.entries[2].quantity record.out-of-range",
                "$.entries[2].direction record.unknown-word",
                "$.entries[3].openLines[0] record.out-of-range",
                "$.entries[3].openLines[2] record.out-of-range",
                "$.entries[3].inventory record.bad-form",
                "$.entries[4] record.wrong-type",
            ],
            issues.Select(issue => $"{issue.Place} {issue.Rule}"),
            StringComparer.Ordinal);
    }

    [Property(MaxTest = 300)]
    public Property TryParse_never_throws(PositiveInt[] places, byte[] values) =>
        DamagedRecord.IsReadOrRefused<CustodyLog>(new CustodyLog(OneOfEach()).ToJson(), places, values, CustodyLog.TryParse);
}
