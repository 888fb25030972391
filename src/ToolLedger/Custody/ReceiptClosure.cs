using System;
using System.Text.Json;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Custody;

/// <summary>A tool on a receipt came back, and a person closed the receipt.</summary>
/// <remarks>Nothing else closes one: not a read, not a count, not a turn-in of the kit. Immutable and thread-safe.</remarks>
public sealed class ReceiptClosure : CustodyEntry
{
    /// <inheritdoc/>
    public override string Kind => CustodyKinds.ReceiptClosure;

    /// <summary>The receipt that is closed.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required EntryId Receipt { get; init => field = Given(value, value.IsEmpty, "A closure needs the receipt that it closes."); }

    /// <summary>Who took the tool back; null (the default) if nobody did.</summary>
    public Signature? AcceptedBy { get; init; }

    /// <summary>The kit it was put into; empty (the default) if it was put into none.</summary>
    public KitId ToKit { get; init; }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WriteString("receipt"u8, Receipt.Value);
        writer.WriteSignature("acceptedBy", AcceptedBy);
        writer.WriteIfGiven("toKit", ToKit.Value);
    }

    internal static ReceiptClosure? Read(EntryFields fields) => fields.Made(static f => new ReceiptClosure
    {
        Id = f.Id,
        At = f.At,
        By = f.By,
        Role = f.Role,
        Witness = f.Witness,
        Where = f.Where,
        Remark = f.Remark,
        Receipt = new EntryId(f.Text("receipt")),
        AcceptedBy = f.Signature("acceptedBy"),
        ToKit = f.Optional("toKit", static text => new KitId(text)),
    });
}
