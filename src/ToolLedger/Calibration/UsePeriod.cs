using System;
using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Calibration;

/// <summary>How often or how long a tool was used in some days, none left out. Days that no period covers are a gap, and over a gap the count is unknown, not zero.</summary>
/// <remarks>Days are of the site's calendar. Periods that overlap are all counted: on the safe side. Immutable and thread-safe.</remarks>
public sealed class UsePeriod : CalibrationEvent
{
    internal const string KindWord = "use-period";

    /// <inheritdoc/>
    public override string Kind => KindWord;

    /// <summary>In what is counted.</summary>
    public required UseMeasure Measure { get; init; }

    /// <summary>The first day.</summary>
    public required DateOnly From { get; init; }

    /// <summary>The last day; not before the first, and not after the day of entry.</summary>
    public required DateOnly Through { get; init; }

    /// <summary>Cycles or hours in these days; 0 says that the tool was not used.</summary>
    /// <value>0 to 100,000,000; whole for cycles.</value>
    public required decimal Amount { get; init; }

    private protected override string Mark => $"{Measure}{From.DayNumber}-{Through.DayNumber}";

    internal static UsePeriod Read(EventFields fields)
    {
        fields.Members.Require("amount");
        return new UsePeriod
        {
            Tool = fields.Tool,
            Function = fields.Function,
            RecordedAt = fields.RecordedAt,
            RecordedBy = fields.RecordedBy,
            Note = fields.Note,
            Measure = fields.Word<UseMeasure>("measure", [("cycles", UseMeasure.Cycles), ("hours", UseMeasure.Hours)]),
            From = EventJson.RequiredDay(fields.Members, "from"),
            Through = EventJson.RequiredDay(fields.Members, "through"),
            Amount = EventJson.Number(fields.Members, "amount") ?? 0,
        };
    }

    private protected override void AddOwnIssues(EventCheck check)
    {
        check.Refuse(!Enum.IsDefined(Measure), "measure", CalibrationEventRules.BadWord);
        check.Refuse(From.Year is < RecordTime.FirstYear or > RecordTime.LastYear || Through < From, "through", CalibrationEventRules.PeriodBackwards,
            ("from", CalibrationRecord.Text(From)), ("through", CalibrationRecord.Text(Through)));
        check.Refuse(RecordTime.IsInRange(RecordedAt) && Through > DateOnly.FromDateTime(RecordedAt.UtcDateTime.AddHours(14)), "through", CalibrationEventRules.InFuture,
            ("at", CalibrationRecord.Text(Through)), ("recordedAt", RecordTime.ToText(RecordedAt)));
        check.Refuse(Amount is < 0 or > CalibrationInterval.MaxUse || (Measure == UseMeasure.Cycles && decimal.Truncate(Amount) != Amount), "amount", CalibrationEventRules.BadAmount,
            ("amount", EventJson.Text(Amount)));
    }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WriteString("measure"u8, Measure == UseMeasure.Cycles ? "cycles" : "hours");
        EventJson.WriteDay(writer, "from", From);
        EventJson.WriteDay(writer, "through", Through);
        EventJson.WriteNumber(writer, "amount", Amount);
    }
}
