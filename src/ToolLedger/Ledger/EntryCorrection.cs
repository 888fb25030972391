using System;
using System.Text.Json;
using ToolLedger.Custody;
using ToolLedger.Records;

namespace ToolLedger.Ledger;

/// <summary>An entry was wrong from the beginning: two persons say so, and from then on the record is read without it. Both entries are kept.</summary>
/// <remarks>
/// Only entries about who answers for what can be corrected. Where a kit was taken, what was declared missing or found, and what was signed are not: those can only be added to, withdrawn by
/// their own entries, or decided on by name. Immutable and thread-safe.
/// </remarks>
public sealed class EntryCorrection : RecordEntry
{
    /// <summary>The word for this kind of fact.</summary>
    public const string KindName = "correction";

    /// <inheritdoc/>
    public override string Kind => KindName;

    /// <summary>The entry that was wrong.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required EntryId Corrects { get; init => field = Given(value, value.IsEmpty, "A correction needs the entry that was wrong."); }

    /// <summary>What was wrong with it, 1 to 500 printable characters.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public required string Reason { get; init => field = RecordText.Require(value, MaxRemarkLength, nameof(value)); }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WriteString("corrects"u8, Corrects.Value);
        writer.WriteString("reason"u8, Reason);
    }

    internal static EntryCorrection? Read(EntryFields fields) => fields.Made(static f => new EntryCorrection
    {
        Id = f.Id,
        At = f.At,
        By = f.By,
        Role = f.Role,
        Witness = f.Witness,
        Where = f.Where,
        Remark = f.Remark,
        Corrects = f.Entry("corrects"),
        Reason = f.Text("reason", MaxRemarkLength),
    });
}
