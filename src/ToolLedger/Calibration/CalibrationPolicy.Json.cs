using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Calibration;

public sealed partial record CalibrationPolicy
{
    private const string DayIncludedWord = "day-included";
    private const string MonthEndWord = "month-end";
    private const string FixedAnchorWord = "fixed-anchor";
    private const string CalibrationWord = "calibration";
    private const string FirstUseWord = "first-use";

    /// <summary>Reads the part of a site policy; what is absent has its default value, everything wrong becomes an issue.</summary>
    internal static CalibrationPolicy FromJson(JsonElement element, string place, IssueList issues)
    {
        var fields = new JsonFields(element, place, issues);
        var policy = new CalibrationPolicy
        {
            DueSoonDays = fields.Int32("dueSoonDays", Default.DueSoonDays, 0, MaxDueSoonDays),
            Convention = fields.Word("dueConvention", Default.Convention,
                (DayIncludedWord, DueConvention.DayIncluded), (MonthEndWord, DueConvention.MonthEnd), (FixedAnchorWord, DueConvention.FixedAnchor)),
            DueSoonUsePercent = fields.Int32("dueSoonUsePercent", Default.DueSoonUsePercent, 1, 100),
            Start = fields.Word("periodStart", Default.Start, (CalibrationWord, PeriodStart.Calibration), (FirstUseWord, PeriodStart.FirstUse)),
            StorageMonths = fields.Int32("storageMonths", Default.StorageMonths, 0, CalibrationRecord.MaxIntervalMonths),
            GraceDays = fields.Int32("graceDays", Default.GraceDays, 0, MaxDays),
            ExtensionDays = fields.Int32("extensionDays", Default.ExtensionDays, 0, MaxDays),
            WindowPercent = fields.Int32("windowPercent", Default.WindowPercent, 0, 50),
            WindowDays = fields.Int32("windowDays", Default.WindowDays, 0, 180),
            UseLogLagDays = fields.Int32("useLogLagDays", Default.UseLogLagDays, 0, MaxDays),
            CheckClearsDrop = fields.Flag("checkClearsDrop", Default.CheckClearsDrop),
            CheckClearsDoubt = fields.Flag("checkClearsDoubt", Default.CheckClearsDoubt),
            CheckClearsRepair = fields.Flag("checkClearsRepair", Default.CheckClearsRepair),
            CheckNarrowsTrace = fields.Flag("checkNarrowsTrace", Default.CheckNarrowsTrace),
        };
        fields.End();
        return policy;
    }

    /// <summary>Writes every setting, default or not, so that a stored policy says all of it.</summary>
    internal void WriteJson(Utf8JsonWriter writer)
    {
        writer.WriteStartObject();
        writer.WriteNumber("dueSoonDays", DueSoonDays);
        writer.WriteString("dueConvention", Convention switch
        {
            DueConvention.MonthEnd => MonthEndWord,
            DueConvention.FixedAnchor => FixedAnchorWord,
            _ => DayIncludedWord,
        });
        writer.WriteNumber("dueSoonUsePercent", DueSoonUsePercent);
        writer.WriteString("periodStart", Start == PeriodStart.FirstUse ? FirstUseWord : CalibrationWord);
        writer.WriteNumber("storageMonths", StorageMonths);
        writer.WriteNumber("graceDays", GraceDays);
        writer.WriteNumber("extensionDays", ExtensionDays);
        writer.WriteNumber("windowPercent", WindowPercent);
        writer.WriteNumber("windowDays", WindowDays);
        writer.WriteNumber("useLogLagDays", UseLogLagDays);
        writer.WriteBoolean("checkClearsDrop", CheckClearsDrop);
        writer.WriteBoolean("checkClearsDoubt", CheckClearsDoubt);
        writer.WriteBoolean("checkClearsRepair", CheckClearsRepair);
        writer.WriteBoolean("checkNarrowsTrace", CheckNarrowsTrace);
        writer.WriteEndObject();
    }
}
