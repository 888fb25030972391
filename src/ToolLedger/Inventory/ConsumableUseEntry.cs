using System;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Inventory;

/// <summary>A job record as stored: {"kit", "line", "job", "unit", "used"?, "scrapped"?, "by", "at"}.</summary>
internal sealed class ConsumableUseEntry : JsonRecord
{
    public JsonText Kit { get; set; }

    public JsonNumber Line { get; set; }

    public JsonText Job { get; set; }

    public JsonText Unit { get; set; }

    public JsonNumber Used { get; set; }

    public JsonNumber Scrapped { get; set; }

    public JsonText By { get; set; }

    public JsonText At { get; set; }

    internal static ConsumableUseEntry Of(ConsumableUse use) => new()
    {
        Kit = new JsonText(use.Kit.Value),
        Line = new JsonNumber(use.LineNumber),
        Job = new JsonText(use.Job),
        Unit = new JsonText(use.Unit.Value),
        Used = use is { Used: 0, Scrapped: > 0 } ? default : new JsonNumber(use.Used),
        Scrapped = use.Scrapped == 0 ? default : new JsonNumber(use.Scrapped),
        By = new JsonText(use.By.Value),
        At = new JsonText(RecordTime.ToText(use.At)),
    };

    internal ConsumableUse? Read(RecordReader reader, string place)
    {
        reader.RefuseUnknown(this, place);
        int issuesBefore = reader.Issues.Reported;
        string? kit = EntryMembers.Id(reader, Kit, place, "kit", InventoryRules.EntryWithoutKit);
        int? line = EntryMembers.Line(reader, Line, place, "line", InventoryRules.EntryWithoutLine);
        string? job = reader.Text(Job, place, "job", IdText.MaxLength);
        string? unit = EntryMembers.Id(reader, Unit, place, "unit", InventoryRules.UseWithoutUnit);
        if (Used.IsAbsent && Scrapped.IsAbsent)
        {
            reader.Report(place + ".used", new Reason(InventoryRules.UseOfNothing));
        }

        decimal? used = Used.IsAbsent ? 0 : EntryMembers.Amount(reader, Used, place, "used");
        decimal? scrapped = Scrapped.IsAbsent ? 0 : EntryMembers.Amount(reader, Scrapped, place, "scrapped");
        string? by = EntryMembers.Id(reader, By, place, "by", InventoryRules.EntryNotSigned);
        DateTimeOffset? at = EntryMembers.Time(reader, At, place, "at", InventoryRules.EntryWithoutTime);
        return reader.Issues.Reported > issuesBefore || kit is null || line is null || job is null || unit is null || by is null || at is null ? null : new ConsumableUse
        {
            Kit = new KitId(kit),
            LineNumber = line.Value,
            Job = job,
            Unit = new Unit(unit),
            Used = used ?? 0,
            Scrapped = scrapped ?? 0,
            By = new PersonId(by),
            At = at.Value,
        };
    }
}
