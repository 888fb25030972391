using System;
using System.Text.Json;
using ToolLedger.Custody;
using ToolLedger.Records;

namespace ToolLedger.Holds;

/// <summary>The decision to stop searching for what was not found.</summary>
/// <remarks>Only named functions may decide that (US Air Force Instruction 21-101 of 16 January 2020, 8.9.2.6). The hold stands until it is released. Immutable and thread-safe.</remarks>
public sealed class SearchDiscontinuation : HoldEntry
{
    /// <inheritdoc/>
    public override string Kind => HoldKinds.SearchDiscontinuation;

    /// <summary>The declaration that began the hold.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required EntryId Hold { get; init => field = Given(value, value.IsEmpty, "The entry needs the hold it belongs to."); }

    /// <summary>Why the search ends, 1 to 500 printable characters.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public required string Decision { get; init => field = RecordText.Require(value, MaxRemarkLength, nameof(value)); }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WriteString("hold"u8, Hold.Value);
        writer.WriteString("decision"u8, Decision);
    }

    internal static SearchDiscontinuation? Read(EntryFields fields) => fields.Made(static f => new SearchDiscontinuation
    {
        Id = f.Id,
        At = f.At,
        By = f.By,
        Role = f.Role,
        Witness = f.Witness,
        Where = f.Where,
        Remark = f.Remark,
        Hold = new EntryId(f.Text("hold")),
        Decision = f.Text("decision", MaxRemarkLength),
    });
}
