using System;
using System.Collections.Generic;
using System.Text.Json;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Custody;

/// <summary>A kit goes from the custodian to a user, who answers for it from then on.</summary>
/// <remarks>The signer is the user and stays accountable until the kit is back and the custodian's side takes it (US Air Force Instruction 21-101 of 16 January 2020, 8.5). Whether the kit may be issued at all is asked of an inventory (the gate before issue); here it is checked who answers for what. Immutable and thread-safe.</remarks>
public sealed class KitIssue : CustodyEntry
{
    /// <inheritdoc/>
    public override string Kind => CustodyKinds.KitIssue;

    /// <summary>The kit.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required KitId Kit { get; init => field = Given(value, value.IsEmpty, "An entry about a kit needs its id."); }

    /// <summary>The manifest revision the kit is issued under, 1 to 1,000,000; the kit is checked against it until it is back.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside the range.</exception>
    public required int Revision { get; init => field = value is >= 1 and <= KitManifest.MaxRevision ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "A revision is 1 to 1,000,000."); }

    /// <summary>The user who signs for it; null (the default) if nobody did.</summary>
    public Signature? ReceivedBy { get; init; }

    /// <summary>The job it goes to; empty (the default) if not stated.</summary>
    public JobId Job { get; init; }

    /// <summary>What is worked on; empty (the default) if not stated.</summary>
    public EquipmentId Equipment { get; init; }

    /// <summary>When it is to be back; null (the default) if not stated.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The year is outside 1970 to 2999.</exception>
    public DateTimeOffset? ExpectedReturn { get; init => field = RecordTime.RequireOrNull(value, nameof(value)); }

    /// <summary>The lines that were open or short when it was issued, annotated and known to both; none by default.</summary>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    /// <exception cref="ArgumentException">A number is outside 1 to 9999, or there are more than 10,000.</exception>
    public IReadOnlyList<int> OpenLines { get; init => field = CustodyChecks.LineNumbers(value); } = [];

    /// <summary>The lines whose tools go out although they are not fit for measurement, for other use; none by default.</summary>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    /// <exception cref="ArgumentException">A number is outside 1 to 9999, or there are more than 10,000.</exception>
    public IReadOnlyList<int> NotForMeasurement { get; init => field = CustodyChecks.LineNumbers(value); } = [];

    /// <summary>The digest of the signed inventory it rests on; empty (the default) if not stated.</summary>
    public Digest Inventory { get; init; }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WriteString("kit"u8, Kit.Value);
        writer.WriteNumber("revision"u8, Revision);
        writer.WriteSignature("receivedBy", ReceivedBy);
        writer.WriteIfGiven("job", Job.Value);
        writer.WriteIfGiven("equipment", Equipment.Value);
        writer.WriteTime("expectedReturn", ExpectedReturn);
        writer.WriteNumbers("openLines", OpenLines);
        writer.WriteNumbers("notForMeasurement", NotForMeasurement);
        writer.WriteIfGiven("inventory", Inventory.IsEmpty ? null : Inventory.ToString());
    }

    internal static KitIssue? Read(EntryFields fields) => fields.Made(static f => new KitIssue
    {
        Id = f.Id,
        At = f.At,
        By = f.By,
        Role = f.Role,
        Witness = f.Witness,
        Where = f.Where,
        Remark = f.Remark,
        Kit = new KitId(f.Text("kit")),
        Revision = f.Int32("revision", 1, KitManifest.MaxRevision),
        ReceivedBy = f.Signature("receivedBy"),
        Job = f.Optional("job", static text => new JobId(text)),
        Equipment = f.Optional("equipment", static text => new EquipmentId(text)),
        ExpectedReturn = f.OptionalTime("expectedReturn"),
        OpenLines = f.LineNumbers("openLines"),
        NotForMeasurement = f.LineNumbers("notForMeasurement"),
        Inventory = f.Digest("inventory"),
    });
}
