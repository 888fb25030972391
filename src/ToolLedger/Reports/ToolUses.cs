using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Calibration;
using ToolLedger.Custody;
using ToolLedger.Ledger;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reports;

/// <summary>What is on record of the uses of a tool that is not in date: how many, and which of them somebody has to review.</summary>
internal sealed record ToolUses(LineConclusion Line, int Count, IReadOnlyList<UseInQuestion> InQuestion)
{
    /// <summary>The lines whose tools may not be used for measurement now.</summary>
    internal static IEnumerable<LineConclusion> LinesNotInDate(ReconciliationResult result) => result.AllLines.Where(static line => line.Line.Tool is not null
        && line.Calibration is { State: not (CalibrationState.NotRequired or CalibrationState.Current or CalibrationState.DueSoon) });

    /// <summary>One for each of those lines; null where neither a ledger nor custody entries were given, so that nothing can be said of uses.</summary>
    internal static IReadOnlyList<ToolUses>? Of(ReconciliationResult result, LedgerState? ledger)
    {
        CustodyRegister custody = ledger?.Custody ?? result.CustodyEntries;
        return ledger is null && custody.IsEmpty ? null : [.. LinesNotInDate(result).Select(line => Of(line, line.Line.Tool!, result, custody))];
    }

    private static ToolUses Of(LineConclusion line, Tool tool, ReconciliationResult result, CustodyRegister custody)
    {
        IReadOnlyList<ToolUse> uses = custody.UsesOf(tool.Id, result.AsOf);
        MeasuredUse[] measured = [.. uses.Select(static use => MeasuredUse.Of(use))];
        var why = new Dictionary<string, List<Reason>>(StringComparer.Ordinal);
        void Note(string use, Reason reason)
        {
            if (!why.TryGetValue(use, out List<Reason>? reasons))
            {
                why.Add(use, reasons = []);
            }

            if (!reasons.Contains(reason))
            {
                reasons.Add(reason);
            }
        }

        CalibrationRegister register = result.CalibrationEntries;
        CalibrationPolicy policy = result.Policy.Calibration;
        foreach (UseReview review in UseReview.Of(register, tool, measured, result.AsOf, policy, result.Policy.Calendar).Where(static review => review.IsToReview))
        {
            Note(review.Use.Id, review.Status.Reason);
            foreach (Reason warning in review.Status.Warnings)
            {
                Note(review.Use.Id, warning);
            }
        }

        // While nobody knows which tool is which, what stands under this one's name may have been done with another.
        if (line.Calibration!.Reason.Kind == CalibrationReasons.IdentityUnknown)
        {
            foreach (MeasuredUse use in measured)
            {
                Note(use.Id, line.Calibration.Reason);
            }
        }

        // A tool that was found bad was bad before its date, too: uses in date are in question as far back as it was last known good.
        foreach (OutOfToleranceTrace trace in TracesOf(tool, result, measured))
        {
            foreach (TracedUse traced in trace.Uses)
            {
                Note(traced.Use.Id, new Reason(LedgerSentences.ShiftUseFound, ("day", trace.FoundOn.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture))));
                Note(traced.Use.Id, traced.Reason);
            }
        }

        return new ToolUses(line, uses.Count, [.. uses.Where(use => why.ContainsKey(use.Id.Value)).Select(use => new UseInQuestion(use, why[use.Id.Value]))]);
    }

    private static IEnumerable<OutOfToleranceTrace> TracesOf(Tool tool, ReconciliationResult result, MeasuredUse[] uses)
    {
        if (uses.Length == 0)
        {
            return [];
        }

        ToolHistory history = result.CalibrationEntries.HistoryOf(tool.Id);
        return
        [
            .. history.Records.Where(record => record.RecordedAt <= result.AsOf && record.WasFoundInTolerance == false)
                .Select(record => OutOfToleranceTrace.Of(result.CalibrationEntries, tool, record, uses, result.AsOf, result.Policy.Calibration, result.Policy.Calendar)),
            .. history.Checks.Where(check => check.RecordedAt <= result.AsOf && !check.IsPassed)
                .Select(check => OutOfToleranceTrace.Of(result.CalibrationEntries, tool, check, uses, result.AsOf, result.Policy.Calibration, result.Policy.Calendar)),
        ];
    }
}
