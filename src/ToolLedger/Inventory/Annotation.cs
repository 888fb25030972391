using System;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Inventory;

/// <summary>A known shortage, signed: a line of a kit is removed for now, or short by so much, or restored.</summary>
/// <remarks>
/// What is missing, removed or broken and cannot be replaced at once is recorded with the kit (US Air Force Instruction 21-101 of 16 January 2020, paragraph
/// 8.3.6.7); a permanent removal needs a new revision of the manifest instead (8.3.6.7.3). The latest annotation of a line stands alone. One without a person or
/// a time cannot be made. Immutable and thread-safe.
/// </remarks>
public sealed class Annotation
{
    /// <summary>Longest reason, in characters.</summary>
    public const int MaxReasonLength = 200;

    /// <summary>The kit it is about.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required KitId Kit { get; init => field = EntryChecks.Checked(value, EntryChecks.Present(value.IsEmpty, InventoryRules.EntryWithoutKit), nameof(Kit)); }

    /// <summary>The number of the line on the manifest.</summary>
    /// <value>1 to 9999.</value>
    /// <exception cref="ArgumentException">The number is outside the range.</exception>
    public required int LineNumber { get; init => field = EntryChecks.Checked(value, EntryChecks.Line(value, InventoryRules.EntryWithoutLine), nameof(LineNumber)); }

    /// <summary>What it says of the line.</summary>
    public required AnnotationKind Kind { get; init; }

    /// <summary>How much is known to be short, in the unit of the line; the default value for the other kinds. An <see cref="InventorySheet"/> refuses a shortage of nothing.</summary>
    public Quantity ShortBy { get; init; }

    /// <summary>Why, 1 to 200 printable characters.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public required string Reason { get; init => field = RecordText.Require(value, MaxReasonLength, nameof(Reason)); }

    /// <summary>Who signed it, when, and in which role.</summary>
    /// <exception cref="ArgumentNullException">The signature is null.</exception>
    public required Signature SignedBy { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>When it ends by itself: from then on the line is expected again; null (the default) if it stands until it is withdrawn.</summary>
    /// <exception cref="ArgumentException">The year is outside 1970 to 2999 (UTC).</exception>
    public DateTimeOffset? Until
    {
        get;
        init => field = value is { } end ? EntryChecks.Checked(end, EntryChecks.Time(end, InventoryRules.EntryWithoutTime), nameof(Until)) : null;
    }

    /// <summary>The report or job it refers to, 1 to 64 printable characters; null (the default) if none.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public string? Report { get; init => field = RecordText.RequireOrNull(value, IdText.MaxLength, nameof(Report)); }
}
