using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Inventory;

/// <summary>A report of an unlisted item as stored: {"description", "owner"?, "by", "at", "kit"?, "lastSeenAt"?, "lastSeenWhere"?, "touchedSince"?}.</summary>
internal sealed class UnlistedItemReportEntry : JsonRecord
{
    public JsonText Description { get; set; }

    public JsonText Owner { get; set; }

    public JsonText By { get; set; }

    public JsonText At { get; set; }

    public JsonText Kit { get; set; }

    public JsonText LastSeenAt { get; set; }

    public JsonText LastSeenWhere { get; set; }

    public IReadOnlyList<JsonText>? TouchedSince { get; set => field = Note(value); }

    internal static UnlistedItemReportEntry Of(UnlistedItemReport report)
    {
        var entry = new UnlistedItemReportEntry
        {
            Description = new JsonText(report.Description),
            Owner = new JsonText(report.Owner.IsEmpty ? null : report.Owner.Value),
            By = new JsonText(report.By.Value),
            At = new JsonText(RecordTime.ToText(report.At)),
            Kit = new JsonText(report.Kit.IsEmpty ? null : report.Kit.Value),
            LastSeenAt = new JsonText(report.LastSeenAt is { } seen ? RecordTime.ToText(seen) : null),
            LastSeenWhere = new JsonText(report.LastSeenWhere.IsEmpty ? null : report.LastSeenWhere.Value),
        };
        if (report.TouchedSince.Count > 0)
        {
            entry.TouchedSince = [.. report.TouchedSince.Select(static place => new JsonText(place.Value))];
        }

        return entry;
    }

    internal UnlistedItemReport? Read(RecordReader reader, string place)
    {
        reader.RefuseUnknown(this, place);
        int issuesBefore = reader.Issues.Reported;
        string? description = reader.Text(Description, place, "description", UnlistedItemReport.MaxDescriptionLength);
        string? owner = reader.OptionalText(Owner, place, "owner", IdText.MaxLength);
        string? by = EntryMembers.Id(reader, By, place, "by", InventoryRules.EntryNotSigned);
        DateTimeOffset? at = EntryMembers.Time(reader, At, place, "at", InventoryRules.EntryWithoutTime);
        string? kit = reader.OptionalText(Kit, place, "kit", IdText.MaxLength);
        DateTimeOffset? lastSeenAt = reader.OptionalTime(LastSeenAt, place, "lastSeenAt");
        string? lastSeenWhere = reader.OptionalText(LastSeenWhere, place, "lastSeenWhere", IdText.MaxLength);
        List<Place> touched = ReadTouched(reader, place);
        return reader.Issues.Reported > issuesBefore || description is null || by is null || at is null ? null : new UnlistedItemReport
        {
            Description = description,
            Owner = owner is null ? default : new PersonId(owner),
            By = new PersonId(by),
            At = at.Value,
            Kit = kit is null ? default : new KitId(kit),
            LastSeenAt = lastSeenAt,
            LastSeenWhere = lastSeenWhere is null ? default : new Place(lastSeenWhere),
            TouchedSince = touched,
        };
    }

    private List<Place> ReadTouched(RecordReader reader, string place)
    {
        var touched = new List<Place>();
        for (int index = 0; index < (TouchedSince?.Count ?? 0); index++)
        {
            string member = string.Create(CultureInfo.InvariantCulture, $"touchedSince[{index}]");
            if (reader.Text(TouchedSince![index], place, member, IdText.MaxLength) is { } text)
            {
                touched.Add(new Place(text));
            }
        }

        return touched;
    }
}
