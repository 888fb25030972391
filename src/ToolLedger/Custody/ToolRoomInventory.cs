using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Custody;

/// <summary>The tool-room inventory at the change of a shift: which kits are here, signed by the outgoing and the incoming supervisor.</summary>
/// <remarks>Kits that are in the room need not be opened for it (US Air Force Instruction 21-101 of 16 January 2020, 8.5.2.1, 8.5.2.2), so it says nothing of their contents. <see cref="RecordEntry.By"/> is the outgoing supervisor. Immutable and thread-safe.</remarks>
public sealed class ToolRoomInventory : CustodyEntry
{
    /// <summary>The most kits of one inventory.</summary>
    public const int MaxKitCount = 10_000;

    /// <inheritdoc/>
    public override string Kind => CustodyKinds.ToolRoomInventory;

    /// <summary>The incoming supervisor who signs too; null (the default) if nobody did.</summary>
    public Signature? IncomingBy { get; init; }

    /// <summary>The kits that are here; none by default.</summary>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    /// <exception cref="ArgumentException">There are more than <see cref="MaxKitCount"/>, or one is empty.</exception>
    public IReadOnlyList<KitId> Present { get; init => field = Listed(value, MaxKitCount, static one => one.IsEmpty); } = [];

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WriteSignature("incomingBy", IncomingBy);
        writer.WriteTexts("present", Present.Select(static one => one.Value));
    }

    internal static ToolRoomInventory? Read(EntryFields fields) => fields.Made(static f => new ToolRoomInventory
    {
        Id = f.Id,
        At = f.At,
        By = f.By,
        Role = f.Role,
        Witness = f.Witness,
        Where = f.Where,
        Remark = f.Remark,
        IncomingBy = f.Signature("incomingBy"),
        Present = [.. f.Texts("present", MaxKitCount).Select(static text => new KitId(text))],
    });
}
