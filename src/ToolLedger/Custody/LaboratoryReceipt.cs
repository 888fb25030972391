using System;
using System.Text.Json;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Custody;

/// <summary>A laboratory received a tool and signed for it.</summary>
/// <remarks>The place of the entry is the laboratory. A note that a tool was sent is a <see cref="DispatchNote"/> and moves nothing. Immutable and thread-safe.</remarks>
public sealed class LaboratoryReceipt : ToolReceipt
{
    /// <inheritdoc/>
    public override string Kind => CustodyKinds.LaboratoryReceipt;

    /// <summary>When it is expected back; null (the default) if not stated.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The year is outside 1970 to 2999.</exception>
    public DateTimeOffset? Due { get; init => field = RecordTime.RequireOrNull(value, nameof(value)); }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        WriteReceipt(writer);
        writer.WriteTime("due", Due);
    }

    internal static LaboratoryReceipt? Read(EntryFields fields) => fields.Made(static f => new LaboratoryReceipt
    {
        Id = f.Id,
        At = f.At,
        By = f.By,
        Role = f.Role,
        Witness = f.Witness,
        Where = f.Where,
        Remark = f.Remark,
        Tool = new ToolId(f.Text("tool")),
        Kit = f.Optional("kit", static text => new KitId(text)),
        ReceivedBy = f.Signature("receivedBy"),
        Pieces = f.OptionalInt32("pieces", 1, CustodyChecks.MaxPieceCount),
        Due = f.OptionalTime("due"),
    });
}
