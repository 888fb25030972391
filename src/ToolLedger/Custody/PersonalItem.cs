using System;
using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Custody;

/// <summary>Something of a person's own is carried in, or out again: a tool, a phone, a pen.</summary>
/// <remarks>Personal tools are forbidden in one directive (US Air Force Instruction 21-101 of 16 January 2020, 8.3.11.2) and allowed by another where they are registered (AMC 145.A.40(a)), so that is a setting. Whoever carried it in answers for it until it is out. Immutable and thread-safe.</remarks>
public sealed class PersonalItem : CustodyEntry
{
    /// <inheritdoc/>
    public override string Kind => CustodyKinds.PersonalItem;

    /// <summary>What it is, 1 to 64 printable characters; the same words carry it in and out.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public required string Item { get; init => field = RecordText.Require(value, IdText.MaxLength, nameof(value)); }

    /// <summary>Whose it is.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required PersonId Owner { get; init => field = Given(value, value.IsEmpty, "A personal item needs its owner."); }

    /// <summary>How many, with the unit.</summary>
    /// <exception cref="ArgumentException">The amount is 0.</exception>
    public required Quantity Quantity { get; init => field = CustodyChecks.Some(value); }

    /// <summary>In or out.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such direction.</exception>
    public required CarriedDirection Direction
    {
        get;
        init => field = Enum.IsDefined(value) ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "There is no such direction.");
    }

    /// <summary>Whether it is a tool; false by default.</summary>
    public bool IsTool { get; init; }

    /// <summary>Whether it stands in the register of personal tools that the organisation keeps; false by default.</summary>
    public bool IsRegistered { get; init; }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WriteString("item"u8, Item);
        writer.WriteString("owner"u8, Owner.Value);
        writer.WriteQuantity("quantity", Quantity);
        writer.WriteString("direction"u8, Direction switch
        {
            CarriedDirection.Out => "out",
            _ => "in",
        });
        writer.WriteFlag("isTool", IsTool);
        writer.WriteFlag("isRegistered", IsRegistered);
    }

    internal static PersonalItem? Read(EntryFields fields) => fields.Made(static f => new PersonalItem
    {
        Id = f.Id,
        At = f.At,
        By = f.By,
        Role = f.Role,
        Witness = f.Witness,
        Where = f.Where,
        Remark = f.Remark,
        Item = f.Text("item", IdText.MaxLength),
        Owner = new PersonId(f.Text("owner")),
        Quantity = f.Some("quantity"),
        Direction = f.Word<CarriedDirection>("direction", ("in", CarriedDirection.In), ("out", CarriedDirection.Out)),
        IsTool = f.Flag("isTool"),
        IsRegistered = f.Flag("isRegistered"),
    });
}
