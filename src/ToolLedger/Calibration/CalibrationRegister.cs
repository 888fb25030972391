using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Linq;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Calibration;

/// <summary>All calibration records that are known, and what they said at any instant.</summary>
/// <remarks>Nothing is overwritten: a correction is a record entered later, and changes no earlier instant. Immutable and thread-safe.</remarks>
public sealed partial class CalibrationRegister
{
    /// <summary>The most records that a register holds.</summary>
    public const int MaxRecordCount = 1_000_000;

    private readonly Dictionary<ToolId, CalibrationRecord[]> byTool;
    private readonly Lazy<Digest> digest;

    /// <summary>Makes a register.</summary>
    /// <param name="records">The records, in any order.</param>
    /// <exception cref="RecordException">A rule of <see cref="CalibrationRules"/> is broken; the exception lists every issue.</exception>
    public CalibrationRegister(IEnumerable<CalibrationRecord> records)
        : this(Ordered(records))
    {
        List<RecordIssue> issues = FindIssues(Records);
        if (issues.Count > 0)
        {
            throw new RecordException(issues);
        }
    }

    private CalibrationRegister(CalibrationRecord[] ordered)
    {
        Records = ordered.AsReadOnly();
        byTool = ordered.GroupBy(record => record.Tool).ToDictionary(group => group.Key, group => group.ToArray());
        digest = new Lazy<Digest>(ComputeDigest);
    }

    /// <summary>A register without a record.</summary>
    public static CalibrationRegister Empty { get; } = new([]);

    /// <summary>The records, by tool, day of calibration and time of entry.</summary>
    public IReadOnlyList<CalibrationRecord> Records { get; }

    /// <summary>SHA-256 over the canonical form (RFC 8785) of <see cref="ToJson"/>.</summary>
    public Digest Digest => digest.Value;

    /// <summary>Makes a register, or says everything that is wrong with it.</summary>
    /// <param name="records">The records, in any order.</param>
    /// <param name="register">The register, or null if it is refused.</param>
    /// <param name="issues">Every rule that is broken, with the position of the record as handed in; empty if the register was made.</param>
    /// <returns>Whether the register was made.</returns>
    public static bool TryCreate(
        IEnumerable<CalibrationRecord> records,
        [NotNullWhen(true)] out CalibrationRegister? register,
        out IReadOnlyList<RecordIssue> issues)
    {
        ArgumentNullException.ThrowIfNull(records);
        CalibrationRecord[] given = [.. records];
        List<RecordIssue> found = FindIssues(given);
        issues = found;
        register = found.Count == 0 ? new CalibrationRegister(Ordered(given)) : null;
        return register is not null;
    }

    /// <summary>The record that counts for a tool at an instant: the latest day of calibration, and of that day the latest entry.</summary>
    /// <param name="tool">The tool.</param>
    /// <param name="at">The instant. A record entered later does not count, nor one whose day had not begun at the site.</param>
    /// <param name="calendar">The calendar of the site.</param>
    /// <returns>The record; null if none counts.</returns>
    public CalibrationRecord? LatestFor(ToolId tool, DateTimeOffset at, SiteCalendar calendar)
    {
        ArgumentNullException.ThrowIfNull(calendar);
        if (!byTool.TryGetValue(tool, out CalibrationRecord[]? records))
        {
            return null;
        }

        DateOnly today = calendar.DateAt(at);
        return Array.FindLast(records, record => record.RecordedAt <= at && record.CalibratedOn <= today);
    }

    /// <summary>The calibration status of a tool at an instant.</summary>
    /// <param name="tool">The tool. One that is said to need no calibration is judged by its records if it has any.</param>
    /// <param name="at">The instant asked about: the time of use, not the time of asking.</param>
    /// <param name="policy">How due dates are read.</param>
    /// <param name="calendar">The calendar of the site: due dates are days there, not instants.</param>
    /// <returns>The status with its reason; never null.</returns>
    public CalibrationStatus StatusOf(Tool tool, DateTimeOffset at, CalibrationPolicy policy, SiteCalendar calendar)
    {
        ArgumentNullException.ThrowIfNull(tool);
        ArgumentNullException.ThrowIfNull(policy);
        ArgumentNullException.ThrowIfNull(calendar);
        DateOnly today = calendar.DateAt(at);
        if (LatestFor(tool.Id, at, calendar) is { } record)
        {
            return Judge(record, today, policy);
        }

        return tool.NeedsCalibration
            ? new CalibrationStatus(CalibrationState.Unknown, null, today, new Reason(CalibrationReasons.NoRecord, ("siteDate", CalibrationRecord.Text(today))))
            : new CalibrationStatus(CalibrationState.NotRequired, null, today, new Reason(CalibrationReasons.NotRequired));
    }

    private static CalibrationStatus Judge(CalibrationRecord record, DateOnly today, CalibrationPolicy policy)
    {
        string convention = policy.Convention == DueConvention.MonthEnd ? "end of month" : "printed day";
        if (record.LastDay(policy.Convention) is not { } last)
        {
            Reason unsettled = record.DueMonth is { } month
                ? new Reason(CalibrationReasons.MonthOnly, ("month", month.ToString("yyyy-MM", CultureInfo.InvariantCulture)), ("convention", convention))
                : new Reason(CalibrationReasons.NoDueDate);
            return new CalibrationStatus(CalibrationState.Unknown, null, today, unsettled);
        }

        int daysLeft = last.DayNumber - today.DayNumber;
        (CalibrationState state, ReasonKind kind) = daysLeft < 0
            ? (CalibrationState.Overdue, CalibrationReasons.Overdue)
            : daysLeft <= policy.DueSoonDays
                ? (CalibrationState.DueSoon, CalibrationReasons.DueSoon)
                : (CalibrationState.Current, CalibrationReasons.Current);
        return new CalibrationStatus(state, last, today, new Reason(
            kind,
            ("until", CalibrationRecord.Text(last)),
            ("convention", convention),
            ("siteDate", CalibrationRecord.Text(today)),
            ("days", Math.Abs(daysLeft).ToString(CultureInfo.InvariantCulture))));
    }

    private static CalibrationRecord[] Ordered(IEnumerable<CalibrationRecord> records)
    {
        ArgumentNullException.ThrowIfNull(records);
        CalibrationRecord[] all = [.. records];
        if (Array.Exists(all, record => record is null))
        {
            throw new ArgumentException("A register holds no null record.", nameof(records));
        }

        return [.. all
            .OrderBy(record => record.Tool.Value, StringComparer.Ordinal)
            .ThenBy(record => record.CalibratedOn)
            .ThenBy(record => record.RecordedAt)];
    }

    private static List<RecordIssue> FindIssues(IReadOnlyList<CalibrationRecord> records)
    {
        var issues = new List<RecordIssue>();
        if (records.Count > MaxRecordCount)
        {
            issues.Add(new RecordIssue("$.records", new Reason(
                CalibrationRules.TooManyRecords,
                ("limit", MaxRecordCount.ToString(CultureInfo.InvariantCulture)),
                ("count", records.Count.ToString(CultureInfo.InvariantCulture)))));
        }

        for (int index = 0; index < records.Count; index++)
        {
            records[index].AddIssues(PlaceOf(index), issues);
        }

        FindRepeats(records, issues);
        return issues;
    }

    private static void FindRepeats(IReadOnlyList<CalibrationRecord> records, List<RecordIssue> issues)
    {
        var seen = new HashSet<(ToolId Tool, DateOnly Day, long RecordedTicks)>();
        for (int index = 0; index < records.Count; index++)
        {
            CalibrationRecord record = records[index];
            if (!seen.Add((record.Tool, record.CalibratedOn, record.RecordedAt.UtcTicks)))
            {
                issues.Report(PlaceOf(index), new Reason(
                    CalibrationRules.SameRecordTwice,
                    ("tool", record.Tool.Value),
                    ("day", CalibrationRecord.Text(record.CalibratedOn)),
                    ("recordedAt", RecordTime.ToText(record.RecordedAt))));
            }
        }
    }

    private Digest ComputeDigest() => ToolLedger.Records.Digest.Of(CanonicalJson.Canonicalize(ToJson()));
}
