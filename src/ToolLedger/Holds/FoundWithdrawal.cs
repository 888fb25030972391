using System;
using System.Text.Json;
using ToolLedger.Custody;
using ToolLedger.Records;

namespace ToolLedger.Holds;

/// <summary>What was declared found was not it: the declaration is withdrawn by a second entry, and both are kept.</summary>
/// <remarks>The hold stands; if it was released on the strength of the declaration, it is placed again. Immutable and thread-safe.</remarks>
public sealed class FoundWithdrawal : HoldEntry
{
    /// <inheritdoc/>
    public override string Kind => HoldKinds.FoundWithdrawal;

    /// <summary>The declaration that is withdrawn.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required EntryId Found { get; init => field = Given(value, value.IsEmpty, "A withdrawal needs the declaration that it withdraws."); }

    /// <summary>Why, 1 to 500 printable characters.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public required string Reason { get; init => field = RecordText.Require(value, MaxRemarkLength, nameof(value)); }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WriteString("found"u8, Found.Value);
        writer.WriteString("reason"u8, Reason);
    }

    internal static FoundWithdrawal? Read(EntryFields fields) => fields.Made(static f => new FoundWithdrawal
    {
        Id = f.Id,
        At = f.At,
        By = f.By,
        Role = f.Role,
        Witness = f.Witness,
        Where = f.Where,
        Remark = f.Remark,
        Found = new EntryId(f.Text("found")),
        Reason = f.Text("reason", MaxRemarkLength),
    });
}
