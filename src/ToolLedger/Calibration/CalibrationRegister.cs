using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
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

    /// <summary>The most events that a register holds.</summary>
    public const int MaxEventCount = 1_000_000;

    private readonly Dictionary<ToolId, ToolHistory> byTool;
    private readonly Lazy<Digest> digest;

    /// <summary>Makes a register of records alone.</summary>
    /// <param name="records">The records, in any order.</param>
    /// <exception cref="RecordException">A rule of <see cref="CalibrationRules"/> is broken; the exception lists every issue.</exception>
    public CalibrationRegister(IEnumerable<CalibrationRecord> records)
        : this(records, [])
    {
    }

    /// <summary>Makes a register.</summary>
    /// <param name="records">The records, in any order.</param>
    /// <param name="events">Plans, labels, checks, reports, extensions and counts of uses, in any order.</param>
    /// <exception cref="RecordException">A rule of <see cref="CalibrationRules"/> or <see cref="CalibrationEventRules"/> is broken; the exception lists every issue.</exception>
    public CalibrationRegister(IEnumerable<CalibrationRecord> records, IEnumerable<CalibrationEvent> events)
        : this(Ordered(records), Ordered(events))
    {
        IssueList issues = FindIssues(Records, Events);
        if (issues.Reported > 0)
        {
            throw new RecordException(issues);
        }
    }

    private CalibrationRegister(CalibrationRecord[] ordered, CalibrationEvent[] events)
    {
        Records = ordered.AsReadOnly();
        Events = events.AsReadOnly();
        byTool = Histories(ordered, events);
        digest = new Lazy<Digest>(ComputeDigest);
    }

    /// <summary>A register without a record.</summary>
    public static CalibrationRegister Empty { get; } = new([]);

    /// <summary>The records, by tool, day of calibration and time of entry.</summary>
    public IReadOnlyList<CalibrationRecord> Records { get; }

    /// <summary>The events, by tool, time of entry and kind.</summary>
    public IReadOnlyList<CalibrationEvent> Events { get; }

    /// <summary>The tools that have a record or an event, ordered by id.</summary>
    public IEnumerable<ToolId> Tools => byTool.Keys.OrderBy(static tool => tool.Value, StringComparer.Ordinal);

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
        return TryCreate(records, [], out register, out issues);
    }

    /// <summary>Makes a register, or says everything that is wrong with it.</summary>
    /// <param name="records">The records, in any order.</param>
    /// <param name="events">Plans, labels, checks, reports, extensions and counts of uses, in any order.</param>
    /// <param name="register">The register, or null if it is refused.</param>
    /// <param name="issues">Every rule that is broken, with the position as handed in; empty if the register was made.</param>
    /// <returns>Whether the register was made.</returns>
    public static bool TryCreate(
        IEnumerable<CalibrationRecord> records,
        IEnumerable<CalibrationEvent> events,
        [NotNullWhen(true)] out CalibrationRegister? register,
        out IReadOnlyList<RecordIssue> issues)
    {
        ArgumentNullException.ThrowIfNull(records);
        ArgumentNullException.ThrowIfNull(events);
        CalibrationRecord[] given = [.. records];
        CalibrationEvent[] happened = [.. events];
        IssueList found = FindIssues(given, happened);
        issues = found;
        register = found.Reported == 0 ? new CalibrationRegister(Ordered(given), Ordered(happened)) : null;
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
        CalibrationRecord[] records = HistoryOf(tool).Records;
        DateOnly today = calendar.DateAt(at);
        for (int index = records.Length - 1; index >= 0; index--)
        {
            if (records[index].RecordedAt <= at && records[index].CalibratedOn <= today)
            {
                return records[index];
            }
        }

        return null;
    }

    /// <summary>The calibration status of a tool at an instant.</summary>
    /// <param name="tool">The tool. One that is said to need no calibration is judged by its records if it has any.</param>
    /// <param name="at">The instant asked about: the time of use, not the time of asking.</param>
    /// <param name="policy">How due dates are read.</param>
    /// <param name="calendar">The calendar of the site: due dates are days there, not instants.</param>
    /// <returns>The status with its reason; never null.</returns>
    public CalibrationStatus StatusOf(Tool tool, DateTimeOffset at, CalibrationPolicy policy, SiteCalendar calendar) => StatusOf(tool, new IntendedUse(at), policy, calendar);

    /// <summary>Whether a tool is fit for a use, with the reason.</summary>
    /// <param name="tool">The tool. One that is said to need no calibration is judged by its records, plan and labels if it has any.</param>
    /// <param name="use">The use: when, and as far as stated with which function, at which value, on which job and until when.</param>
    /// <param name="policy">How due dates are read, and what ends a calibration early.</param>
    /// <param name="calendar">The calendar of the site: due dates are days there, not instants.</param>
    /// <returns>The status with its reason; never null. Label outranks condition, condition outranks date, date outranks range.</returns>
    public CalibrationStatus StatusOf(Tool tool, in IntendedUse use, CalibrationPolicy policy, SiteCalendar calendar)
    {
        var writer = new StatusWriter(policy, calendar);
        CalibrationVerdict verdict = Judge(tool, use, policy, calendar);
        if (use.Function is not null || use.IsIdentityInDoubt)
        {
            return writer.Write(verdict, use, []);
        }

        IReadOnlyList<string> functions = FunctionsOf(tool, use, policy, calendar);
        if (functions.Count < 2)
        {
            return writer.Write(verdict, use, []);
        }

        var parts = new List<CalibrationStatus>(functions.Count);
        foreach (string function in functions)
        {
            IntendedUse part = use with { Function = function };
            parts.Add(writer.Write(Judge(tool, part, policy, calendar), part, []));
        }

        return writer.Write(verdict, use, parts);
    }

    /// <summary>Whether a tool is fit for a use, without words and without allocating.</summary>
    /// <param name="tool">The tool.</param>
    /// <param name="use">The use.</param>
    /// <param name="policy">How due dates are read, and what ends a calibration early.</param>
    /// <param name="calendar">The calendar of the site.</param>
    /// <returns>The verdict; the same as the status with reasons gives.</returns>
    public CalibrationVerdict Judge(Tool tool, in IntendedUse use, CalibrationPolicy policy, SiteCalendar calendar)
    {
        ArgumentNullException.ThrowIfNull(tool);
        ArgumentNullException.ThrowIfNull(policy);
        ArgumentNullException.ThrowIfNull(calendar);
        return new FitnessJudge(HistoryOf(tool.Id), tool, use, policy, calendar).Judge();
    }

    /// <summary>Whether a plan or a record counts for a tool at an instant, so that a label in hand may be its own.</summary>
    internal bool IsKnown(ToolId tool, DateTimeOffset at, SiteCalendar calendar) => LatestFor(tool, at, calendar) is not null || HistoryOf(tool).PlanAt(at) is not null;

    /// <summary>What is recorded of a tool; nothing if nothing is.</summary>
    internal ToolHistory HistoryOf(ToolId tool) => byTool.TryGetValue(tool, out ToolHistory? history) ? history : ToolHistory.Empty;

    /// <summary>The functions that plan or records name at the instant of use; none where the tool is one thing.</summary>
    internal IReadOnlyList<string> FunctionsOf(Tool tool, in IntendedUse use, CalibrationPolicy policy, SiteCalendar calendar)
    {
        ToolHistory history = HistoryOf(tool.Id);
        if (history.PlanAt(use.At) is { } plan)
        {
            return [.. plan.Functions.Select(static one => one.Name)];
        }

        if (history.Functions.Length == 0)
        {
            return [];
        }

        var known = new List<string>();
        var judge = new FitnessJudge(history, tool, use, policy, calendar);
        foreach (string function in history.Functions)
        {
            if (judge.IsKnown(function))
            {
                known.Add(function);
            }
        }

        return known;
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

    private static CalibrationEvent[] Ordered(IEnumerable<CalibrationEvent> events)
    {
        ArgumentNullException.ThrowIfNull(events);
        CalibrationEvent[] all = [.. events];
        if (Array.Exists(all, one => one is null))
        {
            throw new ArgumentException("A register holds no null event.", nameof(events));
        }

        return [.. all
            .OrderBy(one => one.Tool.Value, StringComparer.Ordinal)
            .ThenBy(one => one.RecordedAt)
            .ThenBy(one => one.Identity.Key, StringComparer.Ordinal)];
    }

    private static Dictionary<ToolId, ToolHistory> Histories(CalibrationRecord[] records, CalibrationEvent[] events)
    {
        ILookup<ToolId, CalibrationEvent> eventsOf = events.ToLookup(static one => one.Tool);
        var histories = records.GroupBy(static one => one.Tool).ToDictionary(static group => group.Key, group => new ToolHistory([.. group], [.. eventsOf[group.Key]]));
        foreach (IGrouping<ToolId, CalibrationEvent> group in eventsOf)
        {
            histories.TryAdd(group.Key, new ToolHistory([], [.. group]));
        }

        return histories;
    }

    private Digest ComputeDigest() => ToolLedger.Records.Digest.Of(CanonicalJson.Canonicalize(ToJson()));

    /// <summary>How many records and events it holds, of how many tools.</summary>
    /// <returns>One line of English text.</returns>
    public override string ToString() =>
        $"{CountText.Of(Records.Count, "calibration record")} and {CountText.Of(Events.Count, "event")} of {CountText.Of(byTool.Count, "tool")}";
}
