using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Reads;
using ToolLedger.Tools;

namespace ToolLedger.Calibration;

/// <summary>The status of a tool at the time of one use, for who reviews the work.</summary>
/// <remarks>A later pass is information, never cover. Immutable and thread-safe.</remarks>
public sealed class UseReview
{
    private UseReview(MeasuredUse use, CalibrationStatus status, CalibrationRecord? next)
    {
        Use = use;
        Status = status;
        Next = next;
    }

    /// <summary>The use.</summary>
    public MeasuredUse Use { get; }

    /// <summary>The status at that use: with what was granted by then, and what is known against it now.</summary>
    public CalibrationStatus Status { get; }

    /// <summary>The next calibration after the use, whose state as found tells the reviewer something; null if there is none yet.</summary>
    public CalibrationRecord? Next { get; }

    /// <summary>Whether somebody has to review the use: the tool was not fit for it, or its calibration lapsed before the use ended.</summary>
    public bool IsToReview => !Status.IsFit || Status.LapsesDuring;

    /// <summary>Reviews the uses of a tool.</summary>
    /// <param name="register">What is recorded.</param>
    /// <param name="tool">The tool; uses of others are left out.</param>
    /// <param name="uses">The uses, in any order.</param>
    /// <param name="knownAt">What is known: entries made later are not looked at.</param>
    /// <param name="policy">How due dates are read, and what ends a calibration early.</param>
    /// <param name="calendar">The calendar of the site.</param>
    /// <returns>One review a use, by time and id.</returns>
    public static IReadOnlyList<UseReview> Of(CalibrationRegister register, Tool tool, IEnumerable<MeasuredUse> uses, DateTimeOffset knownAt, CalibrationPolicy policy, SiteCalendar calendar)
    {
        ArgumentNullException.ThrowIfNull(register);
        ArgumentNullException.ThrowIfNull(tool);
        ArgumentNullException.ThrowIfNull(uses);
        ArgumentNullException.ThrowIfNull(calendar);
        return
        [
            .. uses.Where(use => use.Tool == tool.Id)
                .OrderBy(static use => use.At).ThenBy(static use => use.Id, StringComparer.Ordinal)
                .Select(use => new UseReview(use, register.StatusOf(tool, use.Asked(knownAt), policy, calendar), NextAfter(register, use, knownAt, calendar))),
        ];
    }

    private static CalibrationRecord? NextAfter(CalibrationRegister register, MeasuredUse use, DateTimeOffset knownAt, SiteCalendar calendar) =>
        Array.Find(register.HistoryOf(use.Tool).Records, record => record.RecordedAt <= knownAt && record.Concerns(use.Function)
            && (record.CompletedAt is { } done ? done > use.At : record.CalibratedOn > calendar.DateAt(use.At)));
}
