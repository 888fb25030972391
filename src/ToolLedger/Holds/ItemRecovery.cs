using System;
using System.Text.Json;
using ToolLedger.Custody;
using ToolLedger.Records;

namespace ToolLedger.Holds;

/// <summary>Something that was left in place or dropped was recovered.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class ItemRecovery : HoldEntry
{
    /// <inheritdoc/>
    public override string Kind => HoldKinds.ItemRecovery;

    /// <summary>The entry that put it on the list.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required EntryId Item { get; init => field = Given(value, value.IsEmpty, "A recovery needs the entry of what was recovered."); }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WriteString("item"u8, Item.Value);
    }

    internal static ItemRecovery? Read(EntryFields fields) => fields.Made(static f => new ItemRecovery
    {
        Id = f.Id,
        At = f.At,
        By = f.By,
        Role = f.Role,
        Witness = f.Witness,
        Where = f.Where,
        Remark = f.Remark,
        Item = new EntryId(f.Text("item")),
    });
}
