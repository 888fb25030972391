using System;
using System.Collections.Generic;
using System.Text.Json;
using ToolLedger.Custody;
using ToolLedger.Records;

namespace ToolLedger.Holds;

/// <summary>The equipment was marked as held; more may be named than the records show, and the hold may be made an impoundment.</summary>
/// <remarks>What the exposure shows is held from the declaration on, whether or not this entry follows (US Air Force Instruction 21-101 of 16 January 2020, 8.9.2.2; impoundment 7.6). Immutable and thread-safe.</remarks>
public sealed class HoldPlacement : HoldEntry
{
    /// <inheritdoc/>
    public override string Kind => HoldKinds.HoldPlacement;

    /// <summary>The declaration that began the hold.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required EntryId Hold { get; init => field = Given(value, value.IsEmpty, "The entry needs the hold it belongs to."); }

    /// <summary>What is held beside what the exposure shows; none by default.</summary>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    /// <exception cref="ArgumentException">There are more than 1,000, or one is empty.</exception>
    public IReadOnlyList<AffectedThing> Affected { get; init => field = Listed(value, AffectedThing.MaxCount, static one => one.IsEmpty); } = [];

    /// <summary>Whether it is an impoundment: isolated, with a named release authority; false by default.</summary>
    public bool IsImpound { get; init; }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WriteString("hold"u8, Hold.Value);
        AffectedJson.Write(writer, "affected", Affected);
        writer.WriteFlag("isImpound", IsImpound);
    }

    internal static HoldPlacement? Read(EntryFields fields) => fields.Made(static f => new HoldPlacement
    {
        Id = f.Id,
        At = f.At,
        By = f.By,
        Role = f.Role,
        Witness = f.Witness,
        Where = f.Where,
        Remark = f.Remark,
        Hold = new EntryId(f.Text("hold")),
        Affected = AffectedJson.Read(f, "affected"),
        IsImpound = f.Flag("isImpound"),
    });
}
