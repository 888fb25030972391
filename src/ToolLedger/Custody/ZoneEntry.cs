using System;
using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Custody;

/// <summary>Something was carried into a controlled zone, or out of it.</summary>
/// <remarks>A zone log balances on its own: that a kit is complete does not close a zone, and a closed zone does not complete a kit. <see cref="RecordEntry.By"/> is who keeps the log. Immutable and thread-safe.</remarks>
public sealed class ZoneEntry : CustodyEntry
{
    /// <inheritdoc/>
    public override string Kind => CustodyKinds.ZoneEntry;

    /// <summary>The zone.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required Place Zone { get; init => field = Given(value, value.IsEmpty, "A zone entry needs its zone."); }

    /// <summary>What it is, 1 to 64 printable characters: the id of the tool where it has one; the same words carry it in and out.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public required string Item { get; init => field = RecordText.Require(value, IdText.MaxLength, nameof(value)); }

    /// <summary>How many, with the unit; units are never converted.</summary>
    /// <exception cref="ArgumentException">The amount is 0.</exception>
    public required Quantity Quantity { get; init => field = CustodyChecks.Some(value); }

    /// <summary>Who carried it.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required PersonId Carrier { get; init => field = Given(value, value.IsEmpty, "A zone entry needs the person who carries the item."); }

    /// <summary>In or out.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such direction.</exception>
    public required CarriedDirection Direction
    {
        get;
        init => field = Enum.IsDefined(value) ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "There is no such direction.");
    }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WriteString("zone"u8, Zone.Value);
        writer.WriteString("item"u8, Item);
        writer.WriteQuantity("quantity", Quantity);
        writer.WriteString("carrier"u8, Carrier.Value);
        writer.WriteString("direction"u8, Direction switch
        {
            CarriedDirection.Out => "out",
            _ => "in",
        });
    }

    internal static ZoneEntry? Read(EntryFields fields) => fields.Made(static f => new ZoneEntry
    {
        Id = f.Id,
        At = f.At,
        By = f.By,
        Role = f.Role,
        Witness = f.Witness,
        Where = f.Where,
        Remark = f.Remark,
        Zone = new Place(f.Text("zone")),
        Item = f.Text("item", IdText.MaxLength),
        Quantity = f.Some("quantity"),
        Carrier = new PersonId(f.Text("carrier")),
        Direction = f.Word<CarriedDirection>("direction", ("in", CarriedDirection.In), ("out", CarriedDirection.Out)),
    });
}
