using System;
using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Calibration;

/// <summary>Something happened to a tool that puts its calibration in question from that instant on.</summary>
/// <remarks>It counts against uses after it happened, also where it was entered later; uses before it are not touched. Immutable and thread-safe.</remarks>
public sealed class ConditionReport : CalibrationEvent
{
    internal const string KindWord = "condition";

    private static readonly (string Word, ConditionKind Value)[] Words =
    [
        ("dropped", ConditionKind.Dropped), ("overloaded", ConditionKind.Overloaded), ("damaged", ConditionKind.Damaged), ("repaired", ConditionKind.Repaired),
        ("adjusted", ConditionKind.Adjusted), ("seal-broken", ConditionKind.SealBroken), ("doubted", ConditionKind.Doubted),
    ];

    /// <inheritdoc/>
    public override string Kind => KindWord;

    /// <summary>What happened.</summary>
    public required ConditionKind Condition { get; init; }

    /// <summary>When it happened, or was first noticed; not after the entry.</summary>
    public required DateTimeOffset At { get; init; }

    private protected override string Mark => $"{Condition}{At.UtcTicks}";

    internal static ConditionReport Read(EventFields fields) => new()
    {
        Tool = fields.Tool,
        Function = fields.Function,
        RecordedAt = fields.RecordedAt,
        RecordedBy = fields.RecordedBy,
        Note = fields.Note,
        Condition = fields.Word("condition", Words),
        At = fields.Time("at"),
    };

    internal static string Word(ConditionKind kind) => Array.Find(Words, one => one.Value == kind).Word;

    private protected override void AddOwnIssues(EventCheck check)
    {
        check.Refuse(!Enum.IsDefined(Condition), "condition", CalibrationEventRules.BadWord);
        check.Happened(At, RecordedAt, "at");
    }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WriteString("condition"u8, Word(Condition));
        writer.WriteString("at"u8, RecordTime.ToText(At));
    }
}
