using System;
using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Calibration;

/// <summary>A named authority allows a tool to be used past its due date: through a day, for a reason, and for one job where it says so.</summary>
/// <remarks>It moves the date only: a rejected, suspended, inactive or limited tool stays so, and a reached count of uses too. Immutable and thread-safe.</remarks>
public sealed class CalibrationExtension : CalibrationEvent
{
    internal const string KindWord = "extension";

    /// <inheritdoc/>
    public override string Kind => KindWord;

    /// <summary>The last day of use it allows, by the site's calendar; not before the day it was entered.</summary>
    public required DateOnly Through { get; init; }

    /// <summary>The job it is for, such as a test in progress; empty (the default) for any.</summary>
    public JobId Job { get; init; }

    /// <summary>Why: 1 to 200 printable characters.</summary>
    public required string Reason { get; init; }

    /// <summary>The authority who allows it, by name and role; not signed after the entry.</summary>
    public required Signature AllowedBy { get; init; }

    internal bool IsFor(JobId job) => Job.IsEmpty || Job == job;

    internal static CalibrationExtension Read(EventFields fields) => new()
    {
        Tool = fields.Tool,
        Function = fields.Function,
        RecordedAt = fields.RecordedAt,
        RecordedBy = fields.RecordedBy,
        Note = fields.Note,
        Through = EventJson.RequiredDay(fields.Members, "through"),
        Job = fields.Members.Text("job", null, IdText.MaxLength) is { } job ? new JobId(job) : default,
        Reason = fields.Members.RequiredText("reason", MaxNoteLength) ?? EventFields.StandIn,
        AllowedBy = fields.SignatureOf("allowedBy"),
    };

    private protected override void AddOwnIssues(EventCheck check)
    {
        check.Refuse(Reason is null, "reason", CalibrationEventRules.ExtensionWithoutReason);
        check.Text(Reason, MaxNoteLength, "reason");
        check.Refuse(Through.Year is < RecordTime.FirstYear or > RecordTime.LastYear || (RecordTime.IsInRange(RecordedAt) && Through < DateOnly.FromDateTime(RecordedAt.UtcDateTime.AddHours(-14))),
            "through", CalibrationEventRules.ExtensionInPast, ("through", CalibrationRecord.Text(Through)));
        check.Refuse(AllowedBy is null, "allowedBy", CalibrationEventRules.NotSigned);
        check.Refuse(AllowedBy is not null && AllowedBy.At > RecordedAt, "allowedBy", CalibrationEventRules.InFuture,
            ("at", AllowedBy is null ? "" : RecordTime.ToText(AllowedBy.At)), ("recordedAt", RecordTime.ToText(RecordedAt)));
    }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        EventJson.WriteDay(writer, "through", Through);
        EventJson.WriteText(writer, "job", Job.Value);
        writer.WriteString("reason"u8, Reason);
        writer.WriteStartObject("allowedBy");
        writer.WriteString("person"u8, AllowedBy.By.Value);
        writer.WriteString("at"u8, RecordTime.ToText(AllowedBy.At));
        EventJson.WriteText(writer, "role", AllowedBy.Role.Value);
        writer.WriteEndObject();
    }
}
