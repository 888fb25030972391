using System;
using System.Collections.Generic;
using System.Globalization;
using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Calibration;

/// <summary>Members of events from and to JSON.</summary>
internal static class EventJson
{
    internal const decimal MaxValue = 1_000_000_000m;
    internal const int MaxDecimalCount = 9;
    internal const string DayForm = "yyyy-MM-dd";

    internal static string Text(int value) => value.ToString(CultureInfo.InvariantCulture);

    internal static string Text(decimal? value) => value?.ToString("0.#########", CultureInfo.InvariantCulture) ?? "";

    internal static void WriteText(Utf8JsonWriter writer, string name, string? text)
    {
        if (!string.IsNullOrEmpty(text))
        {
            writer.WriteString(name, text);
        }
    }

    internal static void WriteDay(Utf8JsonWriter writer, string name, DateOnly day) =>
        writer.WriteString(name, day.ToString(DayForm, CultureInfo.InvariantCulture));

    internal static void WriteNumber(Utf8JsonWriter writer, string name, decimal? value)
    {
        if (value is { } number)
        {
            writer.WriteNumber(name, Trimmed(number));
        }
    }

    /// <summary>Without zeros at the end, so that equal numbers are written alike.</summary>
    internal static decimal Trimmed(decimal value) => value / 1.0000000000000000000000000000m;

    internal static void WriteLimitations(Utf8JsonWriter writer, IReadOnlyList<CalibrationLimitation> limitations)
    {
        if (limitations.Count == 0)
        {
            return;
        }

        writer.WriteStartArray("limitations");
        foreach (CalibrationLimitation limitation in limitations)
        {
            writer.WriteStartObject();
            WriteText(writer, "function", limitation.Function);
            WriteNumber(writer, "from", limitation.From);
            WriteNumber(writer, "to", limitation.To);
            if (limitation.IsExcluded)
            {
                writer.WriteBoolean("excluded"u8, true);
            }

            WriteText(writer, "note", limitation.Note);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    internal static void WritePoints(Utf8JsonWriter writer, string name, IReadOnlyList<CalibrationPoint> points)
    {
        if (points.Count == 0)
        {
            return;
        }

        writer.WriteStartArray(name);
        foreach (CalibrationPoint point in points)
        {
            writer.WriteStartObject();
            WriteNumber(writer, "nominal", point.Nominal);
            WriteNumber(writer, "measured", point.Measured);
            WriteNumber(writer, "lower", point.Lower);
            WriteNumber(writer, "upper", point.Upper);
            WriteNumber(writer, "uncertainty", point.ExpandedUncertainty);
            WriteNumber(writer, "coverage", point.CoverageFactor == CalibrationPoint.UsualCoverage ? null : point.CoverageFactor);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    internal static decimal? Number(JsonFields fields, string name) =>
        fields.IsThere(name) ? fields.Decimal(name, 0, -MaxValue, MaxValue, MaxDecimalCount) : null;

    internal static DateOnly? Day(JsonFields fields, string name)
    {
        if (fields.Text(name, null, 10) is not { } text)
        {
            return null;
        }

        if (DateOnly.TryParseExact(text, DayForm, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day)
            && day.Year is >= RecordTime.FirstYear and <= RecordTime.LastYear)
        {
            return day;
        }

        fields.Report(name, new Reason(RecordRules.BadForm, ("expected", "a day such as 2026-03-31, years 1970 to 2999"), ("found", SafeText.Excerpt(text))));
        return null;
    }

    internal static DateOnly RequiredDay(JsonFields fields, string name) => fields.Require(name) ? Day(fields, name) ?? DateOnly.FromDayNumber(StandInDay) : DateOnly.FromDayNumber(StandInDay);

    internal static List<CalibrationLimitation> Limitations(JsonFields fields, IssueList issues)
    {
        var limitations = new List<CalibrationLimitation>();
        foreach ((JsonElement item, string place) in fields.Items("limitations", CalibrationLimitation.MaxCount))
        {
            var child = new JsonFields(item, place, issues);
            limitations.Add(new CalibrationLimitation
            {
                Function = child.Text("function", null, IdText.MaxLength),
                From = Number(child, "from"),
                To = Number(child, "to"),
                IsExcluded = child.Flag("excluded", fallback: false),
                Note = child.Text("note", null, CalibrationEvent.MaxNoteLength),
            });
            child.End();
        }

        return limitations;
    }

    internal static List<CalibrationPoint> Points(JsonFields fields, string name, IssueList issues)
    {
        var points = new List<CalibrationPoint>();
        foreach ((JsonElement item, string place) in fields.Items(name, CalibrationPoint.MaxCount))
        {
            var child = new JsonFields(item, place, issues);
            child.Require("nominal");
            child.Require("measured");
            points.Add(new CalibrationPoint
            {
                Nominal = Number(child, "nominal") ?? 0,
                Measured = Number(child, "measured") ?? 0,
                Lower = Number(child, "lower"),
                Upper = Number(child, "upper"),
                ExpandedUncertainty = Number(child, "uncertainty"),
                CoverageFactor = Number(child, "coverage") ?? CalibrationPoint.UsualCoverage,
            });
            child.End();
        }

        return points;
    }

    /// <summary>1970-01-01, for a day that could not be read: reading goes on, and what was made of it is thrown away.</summary>
    private const int StandInDay = 719_162;
}
