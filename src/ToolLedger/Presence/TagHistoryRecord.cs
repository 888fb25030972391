using System.Globalization;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Presence;

/// <summary>A history as stored: {"tag", "tool", "presented", "read", "strengthCount"?, "strengthSumCentiDbm"?, "fadingSum"?}.</summary>
internal sealed class TagHistoryRecord : JsonRecord
{
    public JsonText Tag { get; set; }

    public JsonText Tool { get; set; }

    public JsonNumber Presented { get; set; }

    public JsonNumber Read { get; set; }

    public JsonNumber StrengthCount { get; set; }

    public JsonNumber StrengthSumCentiDbm { get; set; }

    public JsonNumber FadingSum { get; set; }

    internal static TagHistoryRecord Of(TagHistoryEntry entry) => new()
    {
        Tag = new JsonText(entry.Tag.ToString()),
        Tool = new JsonText(entry.Tool.Value),
        Presented = new JsonNumber(entry.SessionsPresented),
        Read = new JsonNumber(entry.SessionsRead),
        StrengthCount = entry.StrengthCount == 0 ? default : new JsonNumber(entry.StrengthCount),
        StrengthSumCentiDbm = entry.StrengthCount == 0 ? default : new JsonNumber(entry.StrengthSumCentiDbm),
        FadingSum = entry.FadingSum == 0 ? default : new JsonNumber(entry.FadingSum),
    };

    /// <summary>Null and issues if a member is missing or wrong.</summary>
    internal TagHistoryEntry? ReadEntry(RecordReader reader, string place)
    {
        int before = reader.Issues.Reported;
        reader.RefuseUnknown(this, place);
        TagId tag = TagBindingRecord.ReadTag(Tag, reader, place);
        string? tool = reader.Text(Tool, place, "tool", IdText.MaxLength);
        int? presented = reader.Int32(Presented, place, "presented", 0, TagHistoryEntry.MaxSessionCount);
        int? read = reader.Int32(Read, place, "read", 0, TagHistoryEntry.MaxSessionCount);
        int count = reader.OptionalInt32(StrengthCount, place, "strengthCount", 0, TagHistoryEntry.MaxSessionCount) ?? 0;
        int sum = reader.OptionalInt32(StrengthSumCentiDbm, place, "strengthSumCentiDbm", int.MinValue, int.MaxValue) ?? 0;
        int fading = reader.OptionalInt32(FadingSum, place, "fadingSum", 0, TagFadingWatch.MaxLimit) ?? 0;
        if (reader.Issues.Reported > before)
        {
            return null;
        }

        CheckPart(reader, place, "read", read!.Value, "presented", presented!.Value);
        CheckPart(reader, place, "strengthCount", count, "read", read.Value);
        if (reader.Issues.Reported == before && (sum < count * short.MinValue || sum > count * short.MaxValue))
        {
            reader.Report(place + ".strengthSumCentiDbm", new Reason(TagHistoryRules.ImpossibleSum, ("count", Text(count)), ("sum", Text(sum))));
        }

        return reader.Issues.Reported > before ? null : new TagHistoryEntry(tag, new ToolId(tool!), presented.Value, read.Value, count, sum) { FadingSum = fading };
    }

    private static void CheckPart(RecordReader reader, string place, string part, int count, string whole, int limit)
    {
        if (count > limit)
        {
            reader.Report(place + "." + part, new Reason(
                TagHistoryRules.PartOverWhole, ("part", part), ("count", Text(count)), ("whole", whole), ("limit", Text(limit))));
        }
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
