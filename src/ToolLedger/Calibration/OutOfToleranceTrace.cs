using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Calibration;

/// <summary>From an out-of-tolerance finding back to every use since the tool was last known good, whatever its due date said.</summary>
/// <remarks>
/// ISO 9001:2015 and AS9100D, 7.1.5.2 (as quoted in public pages): where measuring equipment is found unfit, it is determined whether earlier results were affected. Both ends of the suspect window belong
/// to it. The trace says what values say; what is done about a use, a person decides. Immutable and thread-safe.
/// </remarks>
public sealed class OutOfToleranceTrace
{
    private OutOfToleranceTrace(Tool tool, CalibrationRecord? record, CalibrationCheck? check, DateOnly foundOn, DateOnly? lastGoodOn, string? lastGood, DateTimeOffset knownAt,
        IReadOnlyList<TracedUse> uses, IReadOnlyList<UseDisposition> dispositions)
    {
        Tool = tool;
        Record = record;
        Check = check;
        FoundOn = foundOn;
        LastGoodOn = lastGoodOn;
        LastGood = lastGood;
        KnownAt = knownAt;
        Uses = uses;
        Dispositions = dispositions;
    }

    /// <summary>The tool.</summary>
    public Tool Tool { get; }

    /// <summary>The function that was found out of tolerance; null for all of them.</summary>
    public string? Function => Record is not null ? Record.Function : Check?.Function;

    /// <summary>The calibration that found it; null if a check did.</summary>
    public CalibrationRecord? Record { get; }

    /// <summary>The check that found it; null if a calibration did.</summary>
    public CalibrationCheck? Check { get; }

    /// <summary>The last day of the suspect window: when it was found out of tolerance.</summary>
    public DateOnly FoundOn { get; }

    /// <summary>The first day of the suspect window: when the tool was last known good; null if it never was, and then every use before the finding is suspect.</summary>
    public DateOnly? LastGoodOn { get; }

    /// <summary>What showed it good then: the number of a certificate, or "check"; null if nothing did or the certificate has no number.</summary>
    public string? LastGood { get; }

    /// <summary>What was known when the trace was made.</summary>
    public DateTimeOffset KnownAt { get; }

    /// <summary>The uses in the suspect window, by time and id.</summary>
    public IReadOnlyList<TracedUse> Uses { get; }

    /// <summary>Every decision, also those that later ones replaced, by time.</summary>
    public IReadOnlyList<UseDisposition> Dispositions { get; }

    /// <summary>How many uses nobody has settled yet.</summary>
    public int OpenCount => Uses.Count(static use => use.IsOpen);

    /// <summary>Traces from a calibration that found the tool out of tolerance.</summary>
    /// <param name="register">What is recorded.</param>
    /// <param name="tool">The tool.</param>
    /// <param name="finding">The calibration; it must have found the tool out of tolerance.</param>
    /// <param name="uses">Records of use, of this tool and others, in any order.</param>
    /// <param name="knownAt">What is known: entries made later are not looked at.</param>
    /// <param name="policy">How due dates are read, and whether a check narrows the window.</param>
    /// <param name="calendar">The calendar of the site.</param>
    /// <returns>The trace.</returns>
    /// <exception cref="ArgumentException">The finding is of another tool, or does not say that the tool was out of tolerance.</exception>
    public static OutOfToleranceTrace Of(CalibrationRegister register, Tool tool, CalibrationRecord finding, IEnumerable<MeasuredUse> uses, DateTimeOffset knownAt, CalibrationPolicy policy, SiteCalendar calendar)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return finding.WasFoundInTolerance == false
            ? Make(register, tool, finding, null, finding.Tool, finding.CalibratedOn, uses, knownAt, policy, calendar)
            : throw new ArgumentException("The calibration does not say that the tool was found out of tolerance.", nameof(finding));
    }

    /// <summary>Traces from a failed check.</summary>
    /// <param name="register">What is recorded.</param>
    /// <param name="tool">The tool.</param>
    /// <param name="finding">The check; it must have failed.</param>
    /// <param name="uses">Records of use, of this tool and others, in any order.</param>
    /// <param name="knownAt">What is known: entries made later are not looked at.</param>
    /// <param name="policy">How due dates are read, and whether a check narrows the window.</param>
    /// <param name="calendar">The calendar of the site.</param>
    /// <returns>The trace.</returns>
    /// <exception cref="ArgumentException">The finding is of another tool, or the check passed.</exception>
    public static OutOfToleranceTrace Of(CalibrationRegister register, Tool tool, CalibrationCheck finding, IEnumerable<MeasuredUse> uses, DateTimeOffset knownAt, CalibrationPolicy policy, SiteCalendar calendar)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(calendar);
        return !finding.IsPassed
            ? Make(register, tool, null, finding, finding.Tool, calendar.DateAt(finding.At), uses, knownAt, policy, calendar)
            : throw new ArgumentException("The check passed.", nameof(finding));
    }

    /// <summary>The same trace with decisions of people, or everything that is wrong with them.</summary>
    /// <param name="decisions">The decisions, in any order.</param>
    /// <param name="trace">The trace with them, or null.</param>
    /// <param name="issues">Every rule that is broken (<see cref="TraceReasons"/>); empty if the trace was made.</param>
    /// <returns>Whether it was made.</returns>
    public bool TryWith(IEnumerable<UseDisposition> decisions, [System.Diagnostics.CodeAnalysis.NotNullWhen(true)] out OutOfToleranceTrace? trace, out IReadOnlyList<RecordIssue> issues)
    {
        ArgumentNullException.ThrowIfNull(decisions);
        UseDisposition[] all = [.. Dispositions, .. decisions];
        var found = new IssueList();
        HashSet<string> traced = [.. Uses.Select(static use => use.Use.Id)];
        var seen = new HashSet<(string, long)>();
        for (int index = Dispositions.Count; index < all.Length; index++)
        {
            UseDisposition one = all[index];
            string place = $"$.dispositions[{EventJson.Text(index - Dispositions.Count)}]";
            if (!traced.Contains(one.Use))
            {
                found.Report(place + ".use", new Reason(TraceReasons.UseNotTraced, ("use", one.Use)));
            }

            if (DateOnly.FromDateTime(one.By.At.UtcDateTime.AddHours(14)) < FoundOn)
            {
                found.Report(place + ".by", new Reason(TraceReasons.DecidedTooEarly, ("use", one.Use), ("at", RecordTime.ToText(one.By.At))));
            }
        }

        foreach (UseDisposition one in all.Where(one => !seen.Add((one.Use, one.By.At.UtcTicks))))
        {
            found.Report("$.dispositions", new Reason(TraceReasons.DecidedTwice, ("use", one.Use), ("at", RecordTime.ToText(one.By.At))));
        }

        issues = found;
        UseDisposition[] ordered = [.. all.OrderBy(static one => one.By.At).ThenBy(static one => one.Use, StringComparer.Ordinal)];
        trace = found.Reported > 0 ? null : new OutOfToleranceTrace(Tool, Record, Check, FoundOn, LastGoodOn, LastGood, KnownAt,
            [.. Uses.Select(use => use.With(Array.FindLast(ordered, one => string.Equals(one.Use, use.Use.Id, StringComparison.Ordinal))))], ordered);
        return trace is not null;
    }

    private static OutOfToleranceTrace Make(CalibrationRegister register, Tool tool, CalibrationRecord? record, CalibrationCheck? check, ToolId found, DateOnly foundOn, IEnumerable<MeasuredUse> uses,
        DateTimeOffset knownAt, CalibrationPolicy policy, SiteCalendar calendar)
    {
        ArgumentNullException.ThrowIfNull(register);
        ArgumentNullException.ThrowIfNull(tool);
        ArgumentNullException.ThrowIfNull(uses);
        ArgumentNullException.ThrowIfNull(policy);
        ArgumentNullException.ThrowIfNull(calendar);
        if (found != tool.Id)
        {
            throw new ArgumentException("The finding is of another tool.", nameof(tool));
        }

        var search = new TraceSearch(register.HistoryOf(tool.Id), record, check, foundOn, knownAt, policy, calendar);
        DateOnly? lastGood = search.LastGood(out string? by);
        TracedUse[] traced =
        [
            .. UseReview.Of(register, tool, uses, knownAt, policy, calendar)
                .Where(review => search.IsSuspect(review.Use, lastGood))
                .Select(review => search.Judge(review)),
        ];
        return new OutOfToleranceTrace(tool, record, check, foundOn, lastGood, by, knownAt, traced, []);
    }
}
