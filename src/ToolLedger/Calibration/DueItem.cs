using System;
using System.Globalization;
using ToolLedger.Tools;

namespace ToolLedger.Calibration;

/// <summary>A tool, or a function of it, with the day by which it has to be calibrated.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class DueItem
{
    internal DueItem(Tool tool, string? function, CalibrationStatus status, CalibrationRecord? record, DateOnly? forecast, int sequence, DateTimeOffset changedAt)
    {
        Tool = tool;
        Function = function;
        Status = status;
        Record = record;
        Forecast = forecast;
        Sequence = sequence;
        ChangedAt = changedAt;
    }

    /// <summary>The tool.</summary>
    public Tool Tool { get; }

    /// <summary>The function; null where the tool is one thing.</summary>
    public string? Function { get; }

    /// <summary>The status when the board was made.</summary>
    public CalibrationStatus Status { get; }

    /// <summary>The calibration from which the due date counts; null if there is none.</summary>
    public CalibrationRecord? Record { get; }

    /// <summary>The last day in date; the day of the board where a limit of uses is reached or a check by the user is missing; null where no day is known, or where the tool is unfit for another reason than
    /// its date. A fact, as far as records are.</summary>
    public DateOnly? Due => Status.State switch
    {
        CalibrationState.Current or CalibrationState.DueSoon or CalibrationState.Limited => Status.DueOn,
        CalibrationState.Overdue => Status.Reason.Kind == CalibrationReasons.Overdue ? Status.DueOn : Status.SiteDate,
        _ => null,
    };

    /// <summary>The day on which a limit of cycles or hours is reached if the tool goes on being used as on average since its calibration; null where that cannot be said. A forecast, never a fact.</summary>
    public DateOnly? Forecast { get; }

    /// <summary>The earlier of the two; null if there is neither.</summary>
    public DateOnly? Day => IsForecast ? Forecast : Due;

    /// <summary>Whether <see cref="Day"/> is a forecast.</summary>
    public bool IsForecast => Forecast is not null && (Due is null || Forecast < Due);

    /// <summary>How often entries have changed this due date since the calibration: rises with every extension, correction, plan or count of uses.</summary>
    public int Sequence { get; }

    /// <summary>When the last of these entries was made; the default value if there is no calibration.</summary>
    public DateTimeOffset ChangedAt { get; }

    /// <summary>Tool, function and day.</summary>
    /// <returns>Text for people, such as "T4 torque due 2026-03-31".</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Tool.Id.Value}{(Function is null ? "" : " " + Function)} {(Day is { } day ? $"due {day:yyyy-MM-dd}{(IsForecast ? " (forecast)" : "")}" : "without a due date")}");
}
