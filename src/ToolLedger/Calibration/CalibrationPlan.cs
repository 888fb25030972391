using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Calibration;

/// <summary>What a tool measures and how often each function is to be calibrated, from the entry of the plan on. The latest entered counts.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class CalibrationPlan : CalibrationEvent
{
    /// <summary>The most functions of one tool.</summary>
    public const int MaxFunctionCount = 32;

    internal const string KindWord = "plan";

    /// <inheritdoc/>
    public override string Kind => KindWord;

    /// <summary>The functions, at least 1 and at most 32; a tool that does one thing has one.</summary>
    public required IReadOnlyList<PlannedFunction> Functions { get; init => field = [.. value]; }

    internal PlannedFunction? Find(string? function)
    {
        if (function is null)
        {
            return Functions.Count == 1 ? Functions[0] : null;
        }

        for (int index = 0; index < Functions.Count; index++)
        {
            if (string.Equals(Functions[index].Name, function, System.StringComparison.Ordinal))
            {
                return Functions[index];
            }
        }

        return null;
    }

    internal static CalibrationPlan Read(EventFields fields)
    {
        var functions = new List<PlannedFunction>();
        foreach (JsonFields child in fields.Children("functions", MaxFunctionCount))
        {
            JsonFields? interval = child.Child("interval");
            functions.Add(new PlannedFunction
            {
                Name = child.RequiredText("name", IdText.MaxLength) ?? EventFields.StandIn,
                Unit = child.Text("unit", null, IdText.MaxLength) is { } unit ? new Unit(unit) : default,
                From = EventJson.Number(child, "from"),
                To = EventJson.Number(child, "to"),
                Interval = interval is null ? null : new CalibrationInterval
                {
                    Months = interval.IsThere("months") ? interval.Int32("months", 1, 1, CalibrationRecord.MaxIntervalMonths) : null,
                    Cycles = EventJson.Number(interval, "cycles"),
                    Hours = EventJson.Number(interval, "hours"),
                },
                UserCheckDays = child.IsThere("userCheckDays") ? child.Int32("userCheckDays", 1, 1, PlannedFunction.MaxUserCheckDays) : null,
            });
            interval?.End();
        }

        return new CalibrationPlan
        {
            Tool = fields.Tool,
            Function = fields.Function,
            RecordedAt = fields.RecordedAt,
            RecordedBy = fields.RecordedBy,
            Note = fields.Note,
            Functions = functions,
        };
    }

    private protected override void AddOwnIssues(EventCheck check)
    {
        check.Refuse(Functions.Count is 0 or > MaxFunctionCount, "functions", CalibrationEventRules.PlanWithoutFunction, ("limit", EventJson.Text(MaxFunctionCount)));
        check.Refuse(Function is not null, "function", CalibrationEventRules.PlanOfOneFunction);
        check.Refuse(Functions.Select(static one => one.Name).Distinct(System.StringComparer.Ordinal).Count() < Functions.Count, "functions", CalibrationEventRules.SameFunctionTwice);
        for (int index = 0; index < Functions.Count; index++)
        {
            PlannedFunction one = Functions[index];
            string at = string.Create(CultureInfo.InvariantCulture, $"functions[{index}]");
            check.Text(one.Name, IdText.MaxLength, at + ".name");
            check.Refuse(one.From > one.To, at, CalibrationEventRules.BadRange, ("from", EventJson.Text(one.From)), ("to", EventJson.Text(one.To)));
            check.Refuse(one.Interval is { IsEmpty: true } or { IsValid: false }, at + ".interval", CalibrationEventRules.BadInterval);
            check.Refuse(one.UserCheckDays is < 1 or > PlannedFunction.MaxUserCheckDays, at + ".userCheckDays", CalibrationEventRules.BadInterval);
        }
    }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WriteStartArray("functions");
        foreach (PlannedFunction one in Functions)
        {
            writer.WriteStartObject();
            writer.WriteString("name"u8, one.Name);
            EventJson.WriteText(writer, "unit", one.Unit.Value);
            EventJson.WriteNumber(writer, "from", one.From);
            EventJson.WriteNumber(writer, "to", one.To);
            if (one.Interval is { } interval)
            {
                writer.WriteStartObject("interval");
                EventJson.WriteNumber(writer, "months", interval.Months);
                EventJson.WriteNumber(writer, "cycles", interval.Cycles);
                EventJson.WriteNumber(writer, "hours", interval.Hours);
                writer.WriteEndObject();
            }

            EventJson.WriteNumber(writer, "userCheckDays", one.UserCheckDays);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }
}
