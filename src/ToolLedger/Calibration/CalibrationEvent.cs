using System;
using System.Text.Json;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Calibration;

/// <summary>Something other than a calibration that bears on whether a tool may measure: a plan, a label, a check, a drop, an extension, a count of uses. Always signed.</summary>
/// <remarks>Nothing is edited; what was wrong gets a further event. A <see cref="CalibrationRegister"/> refuses an event that breaks a rule of <see cref="CalibrationEventRules"/>.
/// Rooms derive their own kinds; a host cannot. Immutable and thread-safe.</remarks>
public abstract class CalibrationEvent
{
    /// <summary>Longest note, in characters.</summary>
    public const int MaxNoteLength = 200;

    private protected CalibrationEvent()
    {
    }

    /// <summary>The tool.</summary>
    public required ToolId Tool { get; init; }

    /// <summary>The function of the tool, such as "torque, clockwise": 1 to 64 printable characters; null (the default) for all of them.</summary>
    public string? Function { get; init; }

    /// <summary>When the event was entered, in the years 1970 to 2999: nothing is granted before that instant.</summary>
    public required DateTimeOffset RecordedAt { get; init; }

    /// <summary>Who entered and so signed it; must not be empty.</summary>
    public required PersonId RecordedBy { get; init; }

    /// <summary>What else there is to say: 1 to 200 printable characters; null (the default) if nothing.</summary>
    public string? Note { get; init; }

    /// <summary>The stable word for the kind of event, such as <c>condition</c>.</summary>
    public abstract string Kind { get; }

    /// <summary>What tells two events of one tool apart beside kind, function and time of entry.</summary>
    private protected virtual string Mark => "";

    /// <summary>Whether the event bears on a function; an event or a question without one bears on all.</summary>
    internal bool Concerns(string? function) => Function is null || function is null || string.Equals(Function, function, StringComparison.Ordinal);

    internal (ToolId Tool, string Key) Identity => (Tool, $"{Kind}\n{Function}\n{RecordedAt.UtcTicks}\n{Mark}");

    internal void AddIssues(string place, IssueList issues)
    {
        var check = new EventCheck(place, issues);
        check.Refuse(Tool.IsEmpty, "tool", CalibrationEventRules.WithoutTool);
        check.Refuse(!RecordTime.IsInRange(RecordedAt), "recordedAt", CalibrationEventRules.WithoutRecordedTime);
        check.Refuse(RecordedBy.IsEmpty, "recordedBy", CalibrationEventRules.NotSigned);
        check.Text(Function, IdText.MaxLength, "function");
        check.Text(Note, MaxNoteLength, "note");
        AddOwnIssues(check);
    }

    internal void Write(Utf8JsonWriter writer)
    {
        writer.WriteStartObject();
        writer.WriteString("kind"u8, Kind);
        writer.WriteString("tool"u8, Tool.Value);
        EventJson.WriteText(writer, "function", Function);
        writer.WriteString("recordedAt"u8, RecordTime.ToText(RecordedAt));
        writer.WriteString("recordedBy"u8, RecordedBy.Value);
        EventJson.WriteText(writer, "note", Note);
        WriteMembers(writer);
        writer.WriteEndObject();
    }

    private protected abstract void WriteMembers(Utf8JsonWriter writer);

    private protected abstract void AddOwnIssues(EventCheck check);
}
