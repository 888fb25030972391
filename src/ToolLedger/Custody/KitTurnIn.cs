using System;
using System.Text.Json;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Custody;

/// <summary>A kit comes back from its user, and somebody else on the custodian's side takes it.</summary>
/// <remarks>The person who signed a kit out may not sign it back in (US Air Force Instruction 21-101 of 16 January 2020, 8.2.15); single-person shifts need a second party (8.2.15.1). A turn-in says where the kit is, not that its contents are complete. Immutable and thread-safe.</remarks>
public sealed class KitTurnIn : CustodyEntry
{
    /// <inheritdoc/>
    public override string Kind => CustodyKinds.KitTurnIn;

    /// <summary>The kit.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required KitId Kit { get; init => field = Given(value, value.IsEmpty, "An entry about a kit needs its id."); }

    /// <summary>Who takes it back; null (the default) if nobody did.</summary>
    public Signature? AcceptedBy { get; init; }

    /// <summary>The digest of the signed inventory it rests on; empty (the default) if not stated.</summary>
    public Digest Inventory { get; init; }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WriteString("kit"u8, Kit.Value);
        writer.WriteSignature("acceptedBy", AcceptedBy);
        writer.WriteIfGiven("inventory", Inventory.IsEmpty ? null : Inventory.ToString());
    }

    internal static KitTurnIn? Read(EntryFields fields) => fields.Made(static f => new KitTurnIn
    {
        Id = f.Id,
        At = f.At,
        By = f.By,
        Role = f.Role,
        Witness = f.Witness,
        Where = f.Where,
        Remark = f.Remark,
        Kit = new KitId(f.Text("kit")),
        AcceptedBy = f.Signature("acceptedBy"),
        Inventory = f.Digest("inventory"),
    });
}
