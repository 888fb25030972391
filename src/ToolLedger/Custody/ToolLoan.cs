using System;
using System.Text.Json;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Custody;

/// <summary>One tool is lent on a receipt: by whom, to whom, for which job, until when.</summary>
/// <remarks>The id of the entry is the number of the receipt. Chits in place of issue records are forbidden in one directive (US Air Force Instruction 21-101 of 16 January 2020, 8.2.1.1) and usual under another (NAVEDTRA 14008, tool tags), so they are a setting; so is lending out of a kit that is issued (8.8.1.2). Immutable and thread-safe.</remarks>
public sealed class ToolLoan : ToolReceipt
{
    /// <inheritdoc/>
    public override string Kind => CustodyKinds.ToolLoan;

    /// <summary>The kit whose holder borrows it; empty (the default) if none.</summary>
    public KitId ToKit { get; init; }

    /// <summary>The job it goes to; empty (the default) if not stated.</summary>
    public JobId Job { get; init; }

    /// <summary>What is worked on; empty (the default) if not stated.</summary>
    public EquipmentId Equipment { get; init; }

    /// <summary>When it is to be back; null (the default) if not stated.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The year is outside 1970 to 2999.</exception>
    public DateTimeOffset? Due { get; init => field = RecordTime.RequireOrNull(value, nameof(value)); }

    /// <summary>Whether the receipt is a token left in the place of the tool rather than an issue record; false by default.</summary>
    public bool IsChit { get; init; }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        WriteReceipt(writer);
        writer.WriteIfGiven("toKit", ToKit.Value);
        writer.WriteIfGiven("job", Job.Value);
        writer.WriteIfGiven("equipment", Equipment.Value);
        writer.WriteTime("due", Due);
        writer.WriteFlag("isChit", IsChit);
    }

    internal static ToolLoan? Read(EntryFields fields) => fields.Made(static f => new ToolLoan
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
        ToKit = f.Optional("toKit", static text => new KitId(text)),
        Job = f.Optional("job", static text => new JobId(text)),
        Equipment = f.Optional("equipment", static text => new EquipmentId(text)),
        Due = f.OptionalTime("due"),
        IsChit = f.Flag("isChit"),
    });
}
