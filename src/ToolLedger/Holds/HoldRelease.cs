using System;
using System.Text.Json;
using ToolLedger.Custody;
using ToolLedger.Records;

namespace ToolLedger.Holds;

/// <summary>The decision that ends a hold, by a person who may.</summary>
/// <remarks>Nothing else ends one. Who may, for what was found and for what was not, is a setting; whoever declared it missing may not unless the policy says so (US Air Force Instruction 21-101 of 16 January 2020, 8.9.1 and 7.2.2). Immutable and thread-safe.</remarks>
public sealed class HoldRelease : HoldEntry
{
    /// <inheritdoc/>
    public override string Kind => HoldKinds.HoldRelease;

    /// <summary>The declaration that began the hold.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required EntryId Hold { get; init => field = Given(value, value.IsEmpty, "The entry needs the hold it belongs to."); }

    /// <summary>What the decision rests on.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such ground.</exception>
    public required ReleaseGround Ground
    {
        get;
        init => field = Enum.IsDefined(value) ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "There is no such ground.");
    }

    /// <summary>The decision and its reasons, 1 to 500 printable characters.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public required string Decision { get; init => field = RecordText.Require(value, MaxRemarkLength, nameof(value)); }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WriteString("hold"u8, Hold.Value);
        writer.WriteString("ground"u8, Ground switch
        {
            ReleaseGround.Found => "found",
            ReleaseGround.LeftInPlace => "left-in-place",
            ReleaseGround.DeclaredInError => "declared-in-error",
            _ => "not-found",
        });
        writer.WriteString("decision"u8, Decision);
    }

    internal static HoldRelease? Read(EntryFields fields) => fields.Made(static f => new HoldRelease
    {
        Id = f.Id,
        At = f.At,
        By = f.By,
        Role = f.Role,
        Witness = f.Witness,
        Where = f.Where,
        Remark = f.Remark,
        Hold = new EntryId(f.Text("hold")),
        Ground = f.Word<ReleaseGround>("ground", ("not-found", ReleaseGround.NotFound), ("found", ReleaseGround.Found), ("left-in-place", ReleaseGround.LeftInPlace), ("declared-in-error", ReleaseGround.DeclaredInError)),
        Decision = f.Text("decision", MaxRemarkLength),
    });
}
