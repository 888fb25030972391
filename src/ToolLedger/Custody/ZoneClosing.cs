using System;
using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Custody;

/// <summary>A controlled zone is closed: everything that went in has come out.</summary>
/// <remarks>Refused while the log of the zone is out of balance in either direction (IAEA publication on foreign material management, 5.5.10: all log entries are reconciled first). Immutable and thread-safe.</remarks>
public sealed class ZoneClosing : CustodyEntry
{
    /// <inheritdoc/>
    public override string Kind => CustodyKinds.ZoneClosing;

    /// <summary>The zone.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required Place Zone { get; init => field = Given(value, value.IsEmpty, "A closing needs its zone."); }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WriteString("zone"u8, Zone.Value);
    }

    internal static ZoneClosing? Read(EntryFields fields) => fields.Made(static f => new ZoneClosing
    {
        Id = f.Id,
        At = f.At,
        By = f.By,
        Role = f.Role,
        Witness = f.Witness,
        Where = f.Where,
        Remark = f.Remark,
        Zone = new Place(f.Text("zone")),
    });
}
