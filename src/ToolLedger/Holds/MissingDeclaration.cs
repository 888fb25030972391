using System;
using System.Collections.Generic;
using System.Text.Json;
using ToolLedger.Custody;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Holds;

/// <summary>A person declares that something cannot be found. From then on everything it could be in is held.</summary>
/// <remarks>Said by people only: nothing that was read or not read ever makes one. The declaration is the hold, and its id the hold's id; it covers a piece of a broken tool too (US Air Force Instruction 21-101 of 16 January 2020, 8.9.2), and a thing on no list. Immutable and thread-safe.</remarks>
public sealed class MissingDeclaration : HoldEntry
{
    /// <inheritdoc/>
    public override string Kind => HoldKinds.MissingDeclaration;

    /// <summary>What it is, 1 to 500 printable characters.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public required string Description { get; init => field = RecordText.Require(value, MaxRemarkLength, nameof(value)); }

    /// <summary>The tool; empty (the default) if it is on no list.</summary>
    public ToolId Tool { get; init; }

    /// <summary>The kit it belongs to, or in whose work it was noticed; empty (the default) if none.</summary>
    public KitId Kit { get; init; }

    /// <summary>The line of the manifest, 1 to 9999; null (the default) if it is on none.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside the range.</exception>
    public int? LineNumber { get; init => field = value is null or (>= 1 and <= CustodyChecks.MaxLineNumber) ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "A line number is 1 to 9999."); }

    /// <summary>How many pieces of it, 1 to 999; null (the default) if all of it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside the range.</exception>
    public int? Pieces { get; init => field = value is null or (>= 1 and <= CustodyChecks.MaxPieceCount) ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "A number of pieces is 1 to 999."); }

    /// <summary>Whose it is; empty (the default) if it is the organisation's.</summary>
    public PersonId Owner { get; init; }

    /// <summary>When it was last seen for certain; null (the default) if not known.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The year is outside 1970 to 2999.</exception>
    public DateTimeOffset? LastSeenAt { get; init => field = RecordTime.RequireOrNull(value, nameof(value)); }

    /// <summary>Where it was last seen for certain, as exactly as can be said; empty (the default) if not stated.</summary>
    public Place LastSeenWhere { get; init; }

    /// <summary>What else it could be in since, in the words of whoever declares; none by default.</summary>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    /// <exception cref="ArgumentException">There are more than 1,000, or one is empty.</exception>
    public IReadOnlyList<AffectedThing> TouchedSince { get; init => field = Listed(value, AffectedThing.MaxCount, static one => one.IsEmpty); } = [];

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WriteString("description"u8, Description);
        writer.WriteIfGiven("tool", Tool.Value);
        writer.WriteIfGiven("kit", Kit.Value);
        if (LineNumber is { } lineNumber)
        {
            writer.WriteNumber("lineNumber"u8, lineNumber);
        }

        if (Pieces is { } pieces)
        {
            writer.WriteNumber("pieces"u8, pieces);
        }

        writer.WriteIfGiven("owner", Owner.Value);
        writer.WriteTime("lastSeenAt", LastSeenAt);
        writer.WriteIfGiven("lastSeenWhere", LastSeenWhere.Value);
        AffectedJson.Write(writer, "touchedSince", TouchedSince);
    }

    internal static MissingDeclaration? Read(EntryFields fields) => fields.Made(static f => new MissingDeclaration
    {
        Id = f.Id,
        At = f.At,
        By = f.By,
        Role = f.Role,
        Witness = f.Witness,
        Where = f.Where,
        Remark = f.Remark,
        Description = f.Text("description", MaxRemarkLength),
        Tool = f.Optional("tool", static text => new ToolId(text)),
        Kit = f.Optional("kit", static text => new KitId(text)),
        LineNumber = f.OptionalInt32("lineNumber", 1, CustodyChecks.MaxLineNumber),
        Pieces = f.OptionalInt32("pieces", 1, CustodyChecks.MaxPieceCount),
        Owner = f.Optional("owner", static text => new PersonId(text)),
        LastSeenAt = f.OptionalTime("lastSeenAt"),
        LastSeenWhere = f.Optional("lastSeenWhere", static text => new Place(text)),
        TouchedSince = AffectedJson.Read(f, "touchedSince"),
    });
}
