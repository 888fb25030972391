using System;
using System.Text.Json;
using ToolLedger.Custody;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Holds;

/// <summary>A person declares that something was found, by its own mark.</summary>
/// <remarks>It ends no hold: it is what a release may rest on. What was signed of the tool since it was last truly seen is contradicted by it. Immutable and thread-safe.</remarks>
public sealed class FoundDeclaration : HoldEntry
{
    /// <inheritdoc/>
    public override string Kind => HoldKinds.FoundDeclaration;

    /// <summary>The hold it may settle; empty (the default) if nobody had declared it missing.</summary>
    public EntryId Hold { get; init; }

    /// <summary>The tool; empty (the default) if it is on no list.</summary>
    public ToolId Tool { get; init; }

    /// <summary>The mark as read on it, 1 to 64 printable characters; null (the default) if it has none or it was not read.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public string? MarkRead { get; init => field = RecordText.RequireOrNull(value, IdText.MaxLength, nameof(value)); }

    /// <summary>The kit it was found in; empty (the default) if it was found in none.</summary>
    public KitId InKit { get; init; }

    /// <summary>The equipment it was found in; empty (the default) if it was found in none.</summary>
    public EquipmentId Equipment { get; init; }

    /// <summary>Since when it can have been there: the last time it was truly seen, as far as people can say; null (the default) if not known.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The year is outside 1970 to 2999.</exception>
    public DateTimeOffset? LastSeenAt { get; init => field = RecordTime.RequireOrNull(value, nameof(value)); }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WriteIfGiven("hold", Hold.Value);
        writer.WriteIfGiven("tool", Tool.Value);
        writer.WriteIfGiven("markRead", MarkRead);
        writer.WriteIfGiven("inKit", InKit.Value);
        writer.WriteIfGiven("equipment", Equipment.Value);
        writer.WriteTime("lastSeenAt", LastSeenAt);
    }

    internal static FoundDeclaration? Read(EntryFields fields) => fields.Made(static f => new FoundDeclaration
    {
        Id = f.Id,
        At = f.At,
        By = f.By,
        Role = f.Role,
        Witness = f.Witness,
        Where = f.Where,
        Remark = f.Remark,
        Hold = f.Optional("hold", static text => new EntryId(text)),
        Tool = f.Optional("tool", static text => new ToolId(text)),
        MarkRead = f.OptionalText("markRead", IdText.MaxLength),
        InKit = f.Optional("inKit", static text => new KitId(text)),
        Equipment = f.Optional("equipment", static text => new EquipmentId(text)),
        LastSeenAt = f.OptionalTime("lastSeenAt"),
    });
}
