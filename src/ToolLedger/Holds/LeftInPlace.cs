using System;
using System.Text.Json;
using ToolLedger.Custody;
using ToolLedger.Records;

namespace ToolLedger.Holds;

/// <summary>The item is where it cannot be reached, and a named decision leaves it there.</summary>
/// <remarks>Its exact place is recorded with an image and carried until it is recovered (US Air Force Instruction 21-101 of 16 January 2020, 8.9.2.4.1 and 8.9.2.5.1). Immutable and thread-safe.</remarks>
public sealed class LeftInPlace : HoldEntry
{
    /// <inheritdoc/>
    public override string Kind => HoldKinds.LeftInPlace;

    /// <summary>The declaration that began the hold.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required EntryId Hold { get; init => field = Given(value, value.IsEmpty, "The entry needs the hold it belongs to."); }

    /// <summary>Where exactly, 1 to 500 printable characters.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public required string Location { get; init => field = RecordText.Require(value, MaxRemarkLength, nameof(value)); }

    /// <summary>The equipment it is in.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required EquipmentId Equipment { get; init => field = Given(value, value.IsEmpty, "What is left in place is left in something."); }

    /// <summary>The digest of the image that shows it; empty (the default) if not stated.</summary>
    public Digest Image { get; init; }

    /// <summary>Why it may stay, 1 to 500 printable characters.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public required string Decision { get; init => field = RecordText.Require(value, MaxRemarkLength, nameof(value)); }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WriteString("hold"u8, Hold.Value);
        writer.WriteString("location"u8, Location);
        writer.WriteString("equipment"u8, Equipment.Value);
        writer.WriteIfGiven("image", Image.IsEmpty ? null : Image.ToString());
        writer.WriteString("decision"u8, Decision);
    }

    internal static LeftInPlace? Read(EntryFields fields) => fields.Made(static f => new LeftInPlace
    {
        Id = f.Id,
        At = f.At,
        By = f.By,
        Role = f.Role,
        Witness = f.Witness,
        Where = f.Where,
        Remark = f.Remark,
        Hold = new EntryId(f.Text("hold")),
        Location = f.Text("location", MaxRemarkLength),
        Equipment = new EquipmentId(f.Text("equipment")),
        Image = f.Digest("image"),
        Decision = f.Text("decision", MaxRemarkLength),
    });
}
