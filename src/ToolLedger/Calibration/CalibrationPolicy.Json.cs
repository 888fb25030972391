using System.Collections.Generic;
using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Calibration;

public sealed partial record CalibrationPolicy
{
    private const string DayIncludedWord = "day-included";
    private const string MonthEndWord = "month-end";

    /// <summary>Reads the part of a site policy; what is absent has its default value, everything wrong becomes an issue.</summary>
    internal static CalibrationPolicy FromJson(JsonElement element, string place, List<RecordIssue> issues)
    {
        var fields = new JsonFields(element, place, issues);
        var policy = new CalibrationPolicy
        {
            DueSoonDays = fields.Int32("dueSoonDays", Default.DueSoonDays, 0, MaxDueSoonDays),
            Convention = fields.Word("dueConvention", Default.Convention, (DayIncludedWord, DueConvention.DayIncluded), (MonthEndWord, DueConvention.MonthEnd)),
        };
        fields.End();
        return policy;
    }

    /// <summary>Writes every setting, default or not, so that a stored policy says all of it.</summary>
    internal void WriteJson(Utf8JsonWriter writer)
    {
        writer.WriteStartObject();
        writer.WriteNumber("dueSoonDays", DueSoonDays);
        writer.WriteString("dueConvention", Convention == DueConvention.MonthEnd ? MonthEndWord : DayIncludedWord);
        writer.WriteEndObject();
    }
}
