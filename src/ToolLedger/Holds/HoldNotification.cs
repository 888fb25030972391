using System;
using System.Text.Json;
using ToolLedger.Custody;
using ToolLedger.Records;

namespace ToolLedger.Holds;

/// <summary>Somebody who must be told was told.</summary>
/// <remarks>Who must be told is a setting (US Air Force Instruction 21-101 of 16 January 2020, 8.9.2.3, names flight chief, support section, maintenance operations centre and quality assurance). Immutable and thread-safe.</remarks>
public sealed class HoldNotification : HoldEntry
{
    /// <inheritdoc/>
    public override string Kind => HoldKinds.HoldNotification;

    /// <summary>The declaration that began the hold.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required EntryId Hold { get; init => field = Given(value, value.IsEmpty, "The entry needs the hold it belongs to."); }

    /// <summary>The function that was told, 1 to 64 printable characters, in the words of the policy.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public required string Told { get; init => field = RecordText.Require(value, IdText.MaxLength, nameof(value)); }

    /// <summary>The person who was told; empty (the default) if not stated.</summary>
    public PersonId Person { get; init; }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WriteString("hold"u8, Hold.Value);
        writer.WriteString("told"u8, Told);
        writer.WriteIfGiven("person", Person.Value);
    }

    internal static HoldNotification? Read(EntryFields fields) => fields.Made(static f => new HoldNotification
    {
        Id = f.Id,
        At = f.At,
        By = f.By,
        Role = f.Role,
        Witness = f.Witness,
        Where = f.Where,
        Remark = f.Remark,
        Hold = new EntryId(f.Text("hold")),
        Told = f.Text("told", IdText.MaxLength),
        Person = f.Optional("person", static text => new PersonId(text)),
    });
}
