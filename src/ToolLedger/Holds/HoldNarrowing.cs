using System;
using System.Collections.Generic;
using System.Text.Json;
using ToolLedger.Custody;
using ToolLedger.Records;

namespace ToolLedger.Holds;

/// <summary>A named decision that something is not affected: the only way by which what is held gets less while the hold stands.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class HoldNarrowing : HoldEntry
{
    /// <inheritdoc/>
    public override string Kind => HoldKinds.HoldNarrowing;

    /// <summary>The declaration that began the hold.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required EntryId Hold { get; init => field = Given(value, value.IsEmpty, "The entry needs the hold it belongs to."); }

    /// <summary>What is no longer held; none by default.</summary>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    /// <exception cref="ArgumentException">There are more than 1,000, or one is empty.</exception>
    public IReadOnlyList<AffectedThing> NotAffected { get; init => field = Listed(value, AffectedThing.MaxCount, static one => one.IsEmpty); } = [];

    /// <summary>Why it cannot be in there, 1 to 500 printable characters.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public required string Decision { get; init => field = RecordText.Require(value, MaxRemarkLength, nameof(value)); }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WriteString("hold"u8, Hold.Value);
        AffectedJson.Write(writer, "notAffected", NotAffected);
        writer.WriteString("decision"u8, Decision);
    }

    internal static HoldNarrowing? Read(EntryFields fields) => fields.Made(static f => new HoldNarrowing
    {
        Id = f.Id,
        At = f.At,
        By = f.By,
        Role = f.Role,
        Witness = f.Witness,
        Where = f.Where,
        Remark = f.Remark,
        Hold = new EntryId(f.Text("hold")),
        NotAffected = AffectedJson.Read(f, "notAffected"),
        Decision = f.Text("decision", MaxRemarkLength),
    });
}
