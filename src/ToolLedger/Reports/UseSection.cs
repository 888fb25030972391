using System.Collections.Generic;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Ledger;
using ToolLedger.Reconciliation;

namespace ToolLedger.Reports;

/// <summary>What tools that are not in date were used on: the uses that somebody has to review, with job, function and why; or that nothing is known of uses.</summary>
internal sealed class UseSection(ReportVoice voice, IReportPage page, ReconciliationResult result, LedgerState? ledger)
{
    private const int Shown = 20;

    internal void Put()
    {
        if (!ToolUses.LinesNotInDate(result).Any())
        {
            return;
        }

        if (ToolUses.Of(result, ledger) is not { } tools)
        {
            page.Paragraph(voice.Say(ReportSentences.CalibrationWhenUsed));
            return;
        }

        page.Paragraph(voice.Say(LedgerSentences.ShiftUses));
        page.Rows("line", "uses", "what, when, on which job, and why it is in question", [.. tools.SelectMany(Rows)]);
    }

    private IEnumerable<ReportRow> Rows(ToolUses tool)
    {
        string what = voice.What(tool.Line.Line);
        yield return new ReportRow(tool.Line.Label, "USES", voice.Say(
            LedgerSentences.ShiftUseCount, ("what", what), ("count", ReportVoice.Text(tool.Count)), ("open", ReportVoice.Text(tool.InQuestion.Count))) + ".");

        // The latest first: those can still be caught before the equipment leaves.
        foreach (UseInQuestion one in tool.InQuestion.Reverse().Take(Shown))
        {
            yield return new ReportRow(tool.Line.Label, StatusWords.InQuestion, Say(what, one));
        }

        if (tool.InQuestion.Count > Shown)
        {
            yield return new ReportRow(tool.Line.Label, StatusWords.InQuestion, voice.Say(ReportSentences.AndMore, ("count", ReportVoice.Text(tool.InQuestion.Count - Shown))) + ".");
        }
    }

    private string Say(string what, UseInQuestion one)
    {
        ToolUse use = one.Use;
        return voice.Say(
            LedgerSentences.ShiftUse,
            ("what", what),
            ("at", voice.Time(use.At)),
            ("until", use.Until is { } until ? voice.Say(LedgerSentences.ShiftUseUntil, ("at", voice.Time(until))) : ""),
            ("job", use.Job.Value),
            ("equipment", use.Equipment.IsEmpty ? "" : ", " + use.Equipment.Value),
            ("function", LedgerReport.WhatOf(use)),
            ("by", use.By.Value),
            ("id", use.Id.Value),
            ("why", voice.Join(one.Why))) + ".";
    }
}
