using System;
using System.Globalization;
using System.Linq;
using System.Text;
using System.Text.Json;
using ToolLedger.Calibration;
using ToolLedger.Reads;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>The list that a quality department works off after an out-of-tolerance finding: every suspect use with job, value, error as found, status then, and decision.</summary>
/// <remarks>The same trace gives the same bytes under any culture, time zone and machine. Immutable and thread-safe.</remarks>
public sealed class TraceReport
{
    /// <summary>The schema of the JSON form.</summary>
    public const string Schema = "toolledger/trace-report/1";

    private readonly OutOfToleranceTrace trace;
    private readonly SiteCalendar calendar;
    private readonly Wording wording;

    /// <summary>Makes a report.</summary>
    /// <param name="trace">What it shows.</param>
    /// <param name="calendar">The calendar of the site, for times.</param>
    /// <param name="wording">The sentences; null (the default) for English.</param>
    public TraceReport(OutOfToleranceTrace trace, SiteCalendar calendar, Wording? wording = null)
    {
        ArgumentNullException.ThrowIfNull(trace);
        ArgumentNullException.ThrowIfNull(calendar);
        this.trace = trace;
        this.calendar = calendar;
        this.wording = wording ?? Wording.English;
    }

    /// <summary>Writes the uses as comma-separated values (RFC 4180, CR LF) with a header line. A text that a spreadsheet would take for a formula gets an apostrophe in front.</summary>
    /// <returns>The text.</returns>
    public string ToCsv()
    {
        var csv = new CsvText();
        foreach (string name in (ReadOnlySpan<string>)
            ["use", "at", "job", "equipment", "by", "function", "value", "unit", "tolerance", "errorFound", "uncertainty", "effect", "why", "statusThen", "open", "decision", "decisionWhy", "decidedBy", "decidedAt"])
        {
            csv.Field(name);
        }

        csv.End();
        foreach (TracedUse one in trace.Uses)
        {
            MeasuredUse use = one.Use;
            csv.Field(use.Id).Field(Time(use.At)).Field(use.Job.Value).Field(use.Equipment.Value).Field(use.By.Value).Field(use.Function).Number(Text(use.Value)).Field(use.Unit.Value)
                .Number(Text(use.Tolerance)).Number(Text(one.Error)).Number(Text(one.Uncertainty)).Field(Word(one.Effect)).Field(wording.Say(one.Reason))
                .Field(StatusWords.Code(one.Status.State)).Field(one.IsOpen ? "open" : "settled").Field(one.Disposition is { } decided ? Word(decided.Decision) : "").Field(one.Disposition?.Reason)
                .Field(one.Disposition?.By.By.Value).Field(one.Disposition is { } signed ? Time(signed.By.At) : "");
            csv.End();
        }

        return csv.ToString();
    }

    /// <summary>Writes the report as Markdown with a table in pipe form; every text that came in is escaped.</summary>
    /// <returns>The Markdown.</returns>
    public string ToMarkdown()
    {
        var page = new StringBuilder();
        page.Append("# ").Append(MarkdownText.Escape($"Uses to review: {trace.Tool.Id.Value} {trace.Tool.Description}")).Append("\n\n");
        page.Append(MarkdownText.Escape(Window())).Append("\n\n");
        page.Append(MarkdownText.Escape(string.Create(CultureInfo.InvariantCulture, $"{trace.Uses.Count} uses in the window, {trace.OpenCount} open."))).Append('\n');
        if (trace.Uses.Count > 0)
        {
            page.Append("\n| use | at | job | by | value | error found | effect | status then | decision |\n| --- | --- | --- | --- | --- | --- | --- | --- | --- |\n");
        }

        foreach (TracedUse one in trace.Uses)
        {
            string[] cells =
            [
                one.Use.Id, Time(one.Use.At), one.Use.Job.Value, one.Use.By.Value, $"{Text(one.Use.Value)} {one.Use.Unit.Value}".Trim(), Text(one.Error),
                $"{Word(one.Effect).ToUpperInvariant()}: {wording.Say(one.Reason)}", StatusWords.Print(one.Status.State),
                one.Disposition is { } decided ? $"{Word(decided.Decision)} by {decided.By.By.Value}: {decided.Reason}" : "OPEN",
            ];
            page.Append("| ").AppendJoin(" | ", cells.Select(static cell => MarkdownText.Escape(cell))).Append(" |\n");
        }

        page.Append('\n').Append(MarkdownText.Escape(wording.Say(new Reason(ReportCautions.RecordKeepingAid)))).Append(' ')
            .Append(MarkdownText.Escape(wording.Say(new Reason(ReportCautions.CalibrationRecords)))).Append('\n');
        return page.ToString();
    }

    /// <summary>Writes the report as JSON: indented UTF-8 in a fixed order of members.</summary>
    /// <returns>The bytes.</returns>
    public byte[] ToJson() => RecordJson.Write(writer =>
    {
        writer.WriteStartObject();
        writer.WriteString("schema", Schema);
        writer.WriteString("tool", trace.Tool.Id.Value);
        WriteIf(writer, "function", trace.Function);
        writer.WriteString("foundOn", Day(trace.FoundOn));
        WriteIf(writer, "finding", trace.Record is { } record ? record.Certificate : "check");
        WriteIf(writer, "lastGoodOn", trace.LastGoodOn is { } day ? Day(day) : null);
        WriteIf(writer, "lastGood", trace.LastGood);
        writer.WriteString("knownAt", RecordTime.ToText(trace.KnownAt));
        writer.WriteNumber("open", trace.OpenCount);
        writer.WriteStartArray("uses");
        foreach (TracedUse one in trace.Uses)
        {
            WriteUse(writer, one);
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
    });

    private void WriteUse(Utf8JsonWriter writer, TracedUse one)
    {
        MeasuredUse use = one.Use;
        writer.WriteStartObject();
        writer.WriteString("use", use.Id);
        writer.WriteString("at", RecordTime.ToText(use.At));
        writer.WriteString("job", use.Job.Value);
        WriteIf(writer, "equipment", use.Equipment.Value);
        WriteIf(writer, "by", use.By.Value);
        WriteIf(writer, "function", use.Function);
        WriteIf(writer, "value", use.Value);
        WriteIf(writer, "unit", use.Unit.Value);
        WriteIf(writer, "tolerance", use.Tolerance);
        WriteIf(writer, "errorFound", one.Error);
        WriteIf(writer, "uncertainty", one.Uncertainty);
        writer.WriteString("effect", Word(one.Effect));
        writer.WriteString("reason", one.Reason.Code);
        writer.WriteString("why", wording.Say(one.Reason));
        writer.WriteString("statusThen", StatusWords.Code(one.Status.State));
        writer.WriteString("statusReason", one.Status.Reason.Code);
        writer.WriteBoolean("open", one.IsOpen);
        writer.WriteStartArray("decisions");
        foreach (UseDisposition decided in trace.Dispositions.Where(decided => string.Equals(decided.Use, use.Id, StringComparison.Ordinal)))
        {
            writer.WriteStartObject();
            writer.WriteString("decision", Word(decided.Decision));
            writer.WriteString("reason", decided.Reason);
            writer.WriteString("person", decided.By.By.Value);
            writer.WriteString("at", RecordTime.ToText(decided.By.At));
            WriteIf(writer, "role", decided.By.Role.Value);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private string Window()
    {
        string since = trace.LastGoodOn is { } day
            ? $"last known good on {Day(day)}{(trace.LastGood is { } by ? $" ({by})" : "")}"
            : "never recorded as good before, so every earlier use is suspect";
        return $"Found out of tolerance on {Day(trace.FoundOn)}; {since}. Both days belong to the window.";
    }

    private static void WriteIf(Utf8JsonWriter writer, string name, string? text)
    {
        if (!string.IsNullOrEmpty(text))
        {
            writer.WriteString(name, text);
        }
    }

    private static void WriteIf(Utf8JsonWriter writer, string name, decimal? value)
    {
        if (value is { } number)
        {
            writer.WriteNumber(name, number / 1.0000000000000000000000000000m);
        }
    }

    private string Time(DateTimeOffset time) => RecordTime.ToText(calendar.ToSite(time));

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Text(decimal? value) => value?.ToString("0.#########", CultureInfo.InvariantCulture) ?? "";

    private static string Word(UseEffect effect) => effect switch
    {
        UseEffect.WithinTolerance => "within tolerance",
        UseEffect.OutsideTolerance => "outside tolerance",
        UseEffect.Unclear => "unclear",
        _ => "not known",
    };

    private static string Word(UseDecision decision) => decision switch
    {
        UseDecision.NoEffect => "no effect",
        UseDecision.AcceptedAsIs => "accepted as is",
        UseDecision.DoneAgain => "done again",
        UseDecision.ToBeDoneAgain => "to be done again",
        _ => "work rejected",
    };
}
