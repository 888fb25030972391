using System.Collections.Generic;
using System.Text.Json;

namespace ToolLedger.Calibration;

/// <summary>A label was put on a tool, or on one of its functions, and holds until the next one.</summary>
/// <remarks>
/// A rejected tool becomes usable again only by a calibration after the rejection and a further label with a note why; an inactive one by a calibration after that label.
/// Immutable and thread-safe.
/// </remarks>
public sealed class CalibrationLabel : CalibrationEvent
{
    internal const string KindWord = "label";

    private static readonly (string Word, LabelKind Value)[] Words =
    [
        ("calibrated", LabelKind.Calibrated), ("refer-to-report", LabelKind.ReferToReport), ("limited", LabelKind.Limited), ("user-calibration", LabelKind.UserCalibration),
        ("inactive", LabelKind.Inactive), ("not-required", LabelKind.NotRequired), ("rejected", LabelKind.Rejected),
    ];

    /// <inheritdoc/>
    public override string Kind => KindWord;

    /// <summary>What the label says.</summary>
    public required LabelKind Label { get; init; }

    /// <summary>What a limited label is limited to; empty (the default) for the other kinds.</summary>
    public IReadOnlyList<CalibrationLimitation> Limitations { get; init => field = [.. value]; } = [];

    /// <summary>For how many days a check by the user holds, for a label of user calibration: 1 means that day only. The default is 1.</summary>
    /// <value>1 to 3,660.</value>
    public int UserCheckDays { get; init; } = 1;

    /// <summary>True if the label refuses any use as fit, whatever the date.</summary>
    internal bool Holds => Label is LabelKind.Rejected or LabelKind.Inactive;

    internal static CalibrationLabel Read(EventFields fields) => new()
    {
        Tool = fields.Tool,
        Function = fields.Function,
        RecordedAt = fields.RecordedAt,
        RecordedBy = fields.RecordedBy,
        Note = fields.Note,
        Label = fields.Word("label", Words),
        Limitations = EventJson.Limitations(fields.Members, fields.Issues),
        UserCheckDays = fields.Members.Int32("userCheckDays", 1, 1, PlannedFunction.MaxUserCheckDays),
    };

    internal static string Word(LabelKind kind) => System.Array.Find(Words, one => one.Value == kind).Word;

    private protected override void AddOwnIssues(EventCheck check)
    {
        check.Refuse(!System.Enum.IsDefined(Label), "label", CalibrationEventRules.BadWord);
        check.Refuse(Label == LabelKind.Limited && Limitations.Count == 0, "limitations", CalibrationEventRules.LimitedByNothing);
        check.Refuse(Label == LabelKind.Rejected && Note is null, "note", CalibrationEventRules.RejectedWithoutReason);
        check.Refuse(UserCheckDays is < 1 or > PlannedFunction.MaxUserCheckDays, "userCheckDays", CalibrationEventRules.BadInterval);
        check.Limitations(Limitations, "limitations");
    }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WriteString("label"u8, Word(Label));
        EventJson.WriteLimitations(writer, Limitations);
        EventJson.WriteNumber(writer, "userCheckDays", UserCheckDays == 1 ? null : UserCheckDays);
    }
}
