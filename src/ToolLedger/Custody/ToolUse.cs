using System;
using System.Text.Json;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Custody;

/// <summary>A tool was used on a job: which tool, which job, which function of it, at which value.</summary>
/// <remarks>
/// What a reverse trace asks for: after an out-of-tolerance finding every use since the last good calibration is reviewed (AS9100D and AS9120B, 7.1.5.2).
/// <see cref="RecordEntry.At"/> is when it was used, or from when on; whoever used it is <see cref="RecordEntry.By"/>. Immutable and thread-safe.
/// </remarks>
public sealed class ToolUse : CustodyEntry
{
    /// <summary>The largest value, without its sign.</summary>
    public const decimal MaxValue = 1_000_000_000m;

    /// <summary>The most decimals of a value.</summary>
    public const int MaxDecimalCount = 6;

    /// <inheritdoc/>
    public override string Kind => CustodyKinds.ToolUse;

    /// <summary>The tool that was used.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required ToolId Tool { get; init => field = Given(value, value.IsEmpty, "A use needs its tool."); }

    /// <summary>The job it was used on.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required JobId Job { get; init => field = Given(value, value.IsEmpty, "A use needs its job."); }

    /// <summary>What was worked on; empty (the default) if not stated.</summary>
    public EquipmentId Equipment { get; init; }

    /// <summary>The function of the tool that was used, in the words of its calibration record, such as "torque, clockwise": 1 to 64 printable characters; null (the default) if it has only one or it was not stated.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public string? Function { get; init => field = RecordText.RequireOrNull(value, IdText.MaxLength, nameof(value)); }

    /// <summary>The value that was set or measured, in <see cref="Unit"/>; null (the default) if not stated.</summary>
    /// <value>-1,000,000,000 to 1,000,000,000 with at most 6 decimals.</value>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside the range or has more decimals.</exception>
    public decimal? Value
    {
        get;
        init => field = value is not { } given || IsValue(given)
            ? value
            : throw new ArgumentOutOfRangeException(nameof(value), value, "A value lies between -1,000,000,000 and 1,000,000,000 and has at most 6 decimals.");
    }

    /// <summary>The unit of <see cref="Value"/>, such as N·m; empty (the default) without a value.</summary>
    public Unit Unit { get; init; }

    /// <summary>When the use ended; null (the default) if it was at one instant or is not stated.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The year is outside 1970 to 2999.</exception>
    public DateTimeOffset? Until { get; init => field = RecordTime.RequireOrNull(value, nameof(value)); }

    internal static bool IsValue(decimal value) => decimal.Abs(value) <= MaxValue && decimal.Round(value, MaxDecimalCount) == value;

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WriteString("tool"u8, Tool.Value);
        writer.WriteString("job"u8, Job.Value);
        writer.WriteIfGiven("equipment", Equipment.Value);
        writer.WriteIfGiven("function", Function);
        if (Value is { } value)
        {
            writer.WriteNumber("value"u8, value);
        }

        writer.WriteIfGiven("unit", Unit.Value);
        writer.WriteTime("until", Until);
    }

    internal static ToolUse? Read(EntryFields fields) => fields.Made(static f => new ToolUse
    {
        Id = f.Id,
        At = f.At,
        By = f.By,
        Role = f.Role,
        Witness = f.Witness,
        Where = f.Where,
        Remark = f.Remark,
        Tool = f.Tool("tool"),
        Job = new JobId(f.Text("job")),
        Equipment = f.Optional("equipment", static text => new EquipmentId(text)),
        Function = f.OptionalText("function"),
        Value = f.Number("value", MaxValue, MaxDecimalCount),
        Unit = f.Optional("unit", static text => new Unit(text)),
        Until = f.OptionalTime("until"),
    });
}
