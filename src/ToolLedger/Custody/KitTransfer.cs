using System;
using System.Collections.Generic;
using System.Text.Json;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Custody;

/// <summary>A kit goes from one user to another on site, after both have inventoried it together.</summary>
/// <remarks>At minimum the people involved do a joint inventory and record it (US Air Force Instruction 21-101 of 16 January 2020, 8.2.5.1). What is open goes over open: a transfer accounts for nothing and cuts no exposure. Immutable and thread-safe.</remarks>
public sealed class KitTransfer : CustodyEntry
{
    /// <inheritdoc/>
    public override string Kind => CustodyKinds.KitTransfer;

    /// <summary>The kit.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required KitId Kit { get; init => field = Given(value, value.IsEmpty, "An entry about a kit needs its id."); }

    /// <summary>Who takes it over; null (the default) if nobody did.</summary>
    public Signature? ReceivedBy { get; init; }

    /// <summary>When both inventoried it together; null (the default) if they did not.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The year is outside 1970 to 2999.</exception>
    public DateTimeOffset? InventoriedAt { get; init => field = RecordTime.RequireOrNull(value, nameof(value)); }

    /// <summary>The lines that were open in that inventory; none by default.</summary>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    /// <exception cref="ArgumentException">A number is outside 1 to 9999, or there are more than 10,000.</exception>
    public IReadOnlyList<int> OpenLines { get; init => field = CustodyChecks.LineNumbers(value); } = [];

    /// <summary>Those of them that the giver acknowledges; none by default.</summary>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    /// <exception cref="ArgumentException">A number is outside 1 to 9999, or there are more than 10,000.</exception>
    public IReadOnlyList<int> GiverAcknowledges { get; init => field = CustodyChecks.LineNumbers(value); } = [];

    /// <summary>Those of them that the receiver acknowledges; none by default.</summary>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    /// <exception cref="ArgumentException">A number is outside 1 to 9999, or there are more than 10,000.</exception>
    public IReadOnlyList<int> ReceiverAcknowledges { get; init => field = CustodyChecks.LineNumbers(value); } = [];

    /// <summary>The digest of that inventory; empty (the default) if not stated.</summary>
    public Digest Inventory { get; init; }

    /// <summary>The job it goes to; empty (the default) if not stated.</summary>
    public JobId Job { get; init; }

    /// <summary>What is worked on; empty (the default) if not stated.</summary>
    public EquipmentId Equipment { get; init; }

    /// <summary>When it is to be back; null (the default) if as it was issued.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The year is outside 1970 to 2999.</exception>
    public DateTimeOffset? ExpectedReturn { get; init => field = RecordTime.RequireOrNull(value, nameof(value)); }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WriteString("kit"u8, Kit.Value);
        writer.WriteSignature("receivedBy", ReceivedBy);
        writer.WriteTime("inventoriedAt", InventoriedAt);
        writer.WriteNumbers("openLines", OpenLines);
        writer.WriteNumbers("giverAcknowledges", GiverAcknowledges);
        writer.WriteNumbers("receiverAcknowledges", ReceiverAcknowledges);
        writer.WriteIfGiven("inventory", Inventory.IsEmpty ? null : Inventory.ToString());
        writer.WriteIfGiven("job", Job.Value);
        writer.WriteIfGiven("equipment", Equipment.Value);
        writer.WriteTime("expectedReturn", ExpectedReturn);
    }

    internal static KitTransfer? Read(EntryFields fields) => fields.Made(static f => new KitTransfer
    {
        Id = f.Id,
        At = f.At,
        By = f.By,
        Role = f.Role,
        Witness = f.Witness,
        Where = f.Where,
        Remark = f.Remark,
        Kit = new KitId(f.Text("kit")),
        ReceivedBy = f.Signature("receivedBy"),
        InventoriedAt = f.OptionalTime("inventoriedAt"),
        OpenLines = f.LineNumbers("openLines"),
        GiverAcknowledges = f.LineNumbers("giverAcknowledges"),
        ReceiverAcknowledges = f.LineNumbers("receiverAcknowledges"),
        Inventory = f.Digest("inventory"),
        Job = f.Optional("job", static text => new JobId(text)),
        Equipment = f.Optional("equipment", static text => new EquipmentId(text)),
        ExpectedReturn = f.OptionalTime("expectedReturn"),
    });
}
