using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Calibration;

/// <summary>A check between two calibrations: by the user, or in service. It is no calibration and moves no due date.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class CalibrationCheck : CalibrationEvent
{
    internal const string KindWord = "check";

    /// <inheritdoc/>
    public override string Kind => KindWord;

    /// <summary>What the check was for.</summary>
    public required CheckKind Check { get; init; }

    /// <summary>When it was done; not after the entry.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>Whether the tool passed.</summary>
    public required bool IsPassed { get; init; }

    /// <summary>What was found, point by point; empty (the default) if not recorded.</summary>
    public IReadOnlyList<CalibrationPoint> Points { get; init => field = [.. value]; } = [];

    private protected override string Mark => $"{Check}{At.UtcTicks}";

    internal static CalibrationCheck Read(EventFields fields) => new()
    {
        Tool = fields.Tool,
        Function = fields.Function,
        RecordedAt = fields.RecordedAt,
        RecordedBy = fields.RecordedBy,
        Note = fields.Note,
        Check = fields.Word<CheckKind>("check", [("user", CheckKind.UserCheck), ("in-service", CheckKind.InServiceCheck)]),
        At = fields.Time("at"),
        IsPassed = fields.Members.Require("passed") && fields.Members.Flag("passed", fallback: false),
        Points = EventJson.Points(fields.Members, "points", fields.Issues),
    };

    private protected override void AddOwnIssues(EventCheck check)
    {
        check.Refuse(!Enum.IsDefined(Check), "check", CalibrationEventRules.BadWord);
        check.Happened(At, RecordedAt, "at");
        check.Points(Points, "points");
        check.Refuse(IsPassed && Points.Any(static point => point.IsWithinLimits == false), "passed", CalibrationEventRules.PassedOutsideLimits);
    }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WriteString("check"u8, Check == CheckKind.UserCheck ? "user" : "in-service");
        writer.WriteString("at"u8, RecordTime.ToText(At));
        writer.WriteBoolean("passed"u8, IsPassed);
        EventJson.WritePoints(writer, "points", Points);
    }
}
