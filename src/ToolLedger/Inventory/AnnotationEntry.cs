using System;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Inventory;

/// <summary>An annotation as stored: {"kit", "line", "kind", "shortBy"?, "unit"?, "reason", "signedBy", "until"?, "report"?}.</summary>
internal sealed class AnnotationEntry : JsonRecord
{
    public JsonText Kit { get; set; }

    public JsonNumber Line { get; set; }

    public JsonText Kind { get; set; }

    public JsonNumber ShortBy { get; set; }

    public JsonText Unit { get; set; }

    public JsonText Reason { get; set; }

    public SignatureRecord? SignedBy { get; set => field = Note(value); }

    public JsonText Until { get; set; }

    public JsonText Report { get; set; }

    internal static AnnotationEntry Of(Annotation annotation) => new()
    {
        Kit = new JsonText(annotation.Kit.Value),
        Line = new JsonNumber(annotation.LineNumber),
        Kind = new JsonText(WordOf(annotation.Kind)),
        ShortBy = annotation.ShortBy.Unit.IsEmpty ? default : new JsonNumber(annotation.ShortBy.Amount),
        Unit = new JsonText(annotation.ShortBy.Unit.IsEmpty ? null : annotation.ShortBy.Unit.Value),
        Reason = new JsonText(annotation.Reason),
        SignedBy = SignatureRecord.Of(annotation.SignedBy),
        Until = new JsonText(annotation.Until is { } until ? RecordTime.ToText(until) : null),
        Report = new JsonText(annotation.Report),
    };

    internal Annotation? Read(RecordReader reader, string place)
    {
        reader.RefuseUnknown(this, place);
        int issuesBefore = reader.Issues.Reported;
        string? kit = EntryMembers.Id(reader, Kit, place, "kit", InventoryRules.EntryWithoutKit);
        int? line = EntryMembers.Line(reader, Line, place, "line", InventoryRules.EntryWithoutLine);
        AnnotationKind kind = ReadKind(reader, place);
        decimal? shortBy = ShortBy.IsAbsent ? null : EntryMembers.Amount(reader, ShortBy, place, "shortBy");
        string? unit = shortBy is null ? reader.OptionalText(Unit, place, "unit", IdText.MaxLength) : EntryMembers.Id(reader, Unit, place, "unit", InventoryRules.CountWithoutUnit);
        string? reason = reader.Text(Reason, place, "reason", Annotation.MaxReasonLength);
        Signature? signedBy = EntryMembers.SignedBy(reader, SignedBy, place);
        DateTimeOffset? until = reader.OptionalTime(Until, place, "until");
        string? report = reader.OptionalText(Report, place, "report", IdText.MaxLength);
        return reader.Issues.Reported > issuesBefore || kit is null || line is null || reason is null || signedBy is null ? null : new Annotation
        {
            Kit = new KitId(kit),
            LineNumber = line.Value,
            Kind = kind,
            ShortBy = shortBy is { } amount ? new Quantity(amount, new Unit(unit!)) : default,
            Reason = reason,
            SignedBy = signedBy,
            Until = until,
            Report = report,
        };
    }

    private static string WordOf(AnnotationKind kind) => kind switch
    {
        AnnotationKind.Shortage => "short",
        AnnotationKind.Restored => "restored",
        _ => "removed",
    };

    private AnnotationKind ReadKind(RecordReader reader, string place)
    {
        string? word = reader.Text(Kind, place, "kind", IdText.MaxLength);
        if (word is not (null or "removed" or "short" or "restored"))
        {
            reader.Report($"{place}.kind", new Records.Reason(RecordRules.UnknownWord, ("allowed", "removed, short, restored"), ("found", SafeText.Excerpt(word))));
        }

        return word switch
        {
            "short" => AnnotationKind.Shortage,
            "restored" => AnnotationKind.Restored,
            _ => AnnotationKind.Removed,
        };
    }
}
