using System;
using System.Text.Json;
using ToolLedger.Custody;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Holds;

/// <summary>Something is known to have fallen in and was not retrieved: an entry of the drop log.</summary>
/// <remarks>It stays on the log until it is recovered. The place of the entry is the zone. Immutable and thread-safe.</remarks>
public sealed class DropRecord : HoldEntry
{
    /// <inheritdoc/>
    public override string Kind => HoldKinds.DropRecord;

    /// <summary>What it is, 1 to 500 printable characters.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public required string Description { get; init => field = RecordText.Require(value, MaxRemarkLength, nameof(value)); }

    /// <summary>The tool; empty (the default) if it is on no list.</summary>
    public ToolId Tool { get; init; }

    /// <summary>What it fell into; empty (the default) if not stated.</summary>
    public EquipmentId Equipment { get; init; }

    /// <summary>How many, with the unit.</summary>
    /// <exception cref="ArgumentException">The amount is 0.</exception>
    public required Quantity Quantity { get; init => field = CustodyChecks.Some(value); }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WriteString("description"u8, Description);
        writer.WriteIfGiven("tool", Tool.Value);
        writer.WriteIfGiven("equipment", Equipment.Value);
        writer.WriteQuantity("quantity", Quantity);
    }

    internal static DropRecord? Read(EntryFields fields) => fields.Made(static f => new DropRecord
    {
        Id = f.Id,
        At = f.At,
        By = f.By,
        Role = f.Role,
        Witness = f.Witness,
        Where = f.Where,
        Remark = f.Remark,
        Description = f.Text("description", MaxRemarkLength),
        Tool = f.Optional("tool", static text => new ToolId(text)),
        Equipment = f.Optional("equipment", static text => new EquipmentId(text)),
        Quantity = f.Some("quantity"),
    });
}
