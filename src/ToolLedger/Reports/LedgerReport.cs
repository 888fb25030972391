using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Holds;
using ToolLedger.Ledger;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reports;

/// <summary>What a supervisor, an auditor or an investigator asks of a ledger: who answered for a tool, what could be affected, which holds stand, which sign-offs were wrong, and a sheet to sign.</summary>
/// <remarks>Every page carries the cautions. Every status is a word. Immutable and thread-safe as far as the ledger it is about is left alone.</remarks>
public sealed partial class LedgerReport
{
    private const int FindingsShownMax = 5;

    private readonly LedgerState state;
    private readonly DateTimeOffset asOf;
    private readonly ReportVoice voice;

    /// <summary>Makes reports of a ledger.</summary>
    /// <param name="state">What follows from its entries.</param>
    /// <param name="asOf">The instant the answers are for.</param>
    /// <param name="calendar">The site's calendar; null for UTC.</param>
    /// <param name="wording">The sentences; null for English.</param>
    /// <exception cref="ArgumentNullException">The state is null.</exception>
    public LedgerReport(LedgerState state, DateTimeOffset asOf, SiteCalendar? calendar = null, Wording? wording = null)
    {
        ArgumentNullException.ThrowIfNull(state);
        this.state = state;
        this.asOf = asOf;
        voice = new ReportVoice(wording ?? Wording.English, calendar ?? SiteCalendar.Utc);
    }

    /// <summary>Who answered for a tool through time, and what it was used on.</summary>
    /// <param name="tool">The tool.</param>
    /// <returns>The page.</returns>
    public LedgerPage CustodyOf(ToolId tool) => Page(page =>
    {
        page.Title(Say(LedgerSentences.CustodyTitle, ("tool", tool.Value), ("at", Time(asOf))));
        page.Rows("", "with", "from when to when", [.. state.Custody.HistoryOf(tool, asOf).Select(span => new ReportRow("", span.Holder.ToString(), Say(
            LedgerSentences.Span,
            ("from", span.From == DateTimeOffset.MinValue ? "..." : Time(span.From)),
            ("until", span.Until is { } until ? Time(until) : "now"),
            ("how", span.Entry is { } entry ? HowOf(entry, span.Due) : Say(LedgerSentences.NeverSigned)))))]);
        IReadOnlyList<ToolUse> uses = state.Custody.UsesOf(tool, asOf);
        if (uses.Count > 0)
        {
            page.Heading(2, Say(LedgerSentences.Uses));
            page.Rows("", "equipment", "use", [.. uses.Select(use => new ReportRow("", use.Equipment.IsEmpty ? "-" : use.Equipment.Value, Say(
                LedgerSentences.Use, ("at", Time(use.At)), ("job", use.Job.Value), ("what", WhatOf(use)), ("by", use.By.Value))))]);
        }
    });

    /// <summary>What could be affected, by equipment, job and place: of every kit the lines that its last sign-off left open.</summary>
    /// <returns>The page.</returns>
    public LedgerPage ExposureByJob() => Page(page =>
    {
        page.Title(Say(LedgerSentences.ExposureTitle, ("at", Time(asOf))));
        page.Paragraph(Say(LedgerSentences.ExposureNote));
        var lines = OpenLines().Select(open => (open, exposure: state.Exposure.Of(open.Kit, open.Line.Label, asOf))).ToArray();
        ReportRow[] rows = [.. lines
            .SelectMany(static line => line.exposure.Items.Select(item => (line.open, line.exposure.Since, item)))
            .OrderBy(static one => NameOf(one.item), StringComparer.Ordinal)
            .ThenBy(static one => one.item.From)
            .ThenBy(static one => one.open.Kit.Value, StringComparer.Ordinal)
            .Select(one => new ReportRow("", NameOf(one.item), Say(
                LedgerSentences.Exposed,
                ("kit", one.open.Kit.Value),
                ("line", one.open.Line.Label),
                ("what", one.open.Line.Description),
                ("from", Time(one.item.From)),
                ("until", one.item.Until is { } until ? Time(until) : "now"),
                ("since", AccountedOf(one.Since)))))];

        // A line without an entry that tells where it was is no less open.
        ReportRow[] unknown = [.. lines.Where(static line => line.exposure.Items.Count == 0).Select(line => new ReportRow("", "NOT ON RECORD", Say(
            LedgerSentences.ExposedUnknown,
            ("kit", line.open.Kit.Value),
            ("line", line.open.Line.Label),
            ("what", line.open.Line.Description),
            ("since", AccountedOf(line.exposure.Since)))))];
        page.Rows("", "affected", "by which line", [.. rows, .. unknown]);
        if (lines.Length == 0)
        {
            page.Paragraph(Say(LedgerSentences.NothingOpen));
        }

        if (state.Holds.HeldAt(asOf) is { Count: > 0 } held)
        {
            page.Paragraph(Say(LedgerSentences.HoldsBeside, ("holds", string.Join(", ", held.Select(static hold => hold.Declaration.Id.Value)))));
        }
    });

    /// <summary>The lines that the last sign-off of each kit left open, oldest accounting first.</summary>
    /// <returns>Kit, line and when it was last positively accounted for; null if that is on no record.</returns>
    public IReadOnlyList<(Kits.KitId Kit, SignedLine Line, DateTimeOffset? Since)> OpenLines() =>
        [.. state.SignOffs.Where(signOff => signOff.At <= asOf)
            .GroupBy(static signOff => signOff.Kit)
            .Select(static kit => kit.Last())
            .SelectMany(signOff => signOff.Lines.Where(static line => !line.IsAccounted).Select(line => (signOff.Kit, Line: line, state.Exposure.Of(signOff.Kit, line.Label, asOf).Since)))
            .OrderBy(static open => open.Since ?? DateTimeOffset.MinValue)
            .ThenBy(static open => open.Kit.Value, StringComparer.Ordinal)];

    private LedgerPage Page(Action<IReportPage> put) => new(page =>
    {
        put(page);
        PutFindings(page);
        page.Footing(Say(ReportSentences.Cautions));
        page.Items([.. ReportCautions.All.Select(caution => Say(caution))]);
    });

    /// <summary>What the pages could not take into account. Sign-offs that a found tool contradicts have a page of their own.</summary>
    private void PutFindings(IReportPage page)
    {
        LedgerFinding[] findings = [.. state.Findings.Where(static finding => finding.Reason.Kind != LedgerRules.FindingContradicted)];
        if (findings.Length == 0)
        {
            return;
        }

        page.Heading(2, Say(LedgerSentences.FindingsHeading));
        page.Paragraph(Say(LedgerSentences.FindingsNote));
        page.Items([.. findings.Take(FindingsShownMax).Select(finding => voice.Say(finding.Reason))]);
        if (findings.Length > FindingsShownMax)
        {
            page.Paragraph(Say(LedgerSentences.FindingsMore, ("count", ReportVoice.Text(findings.Length - FindingsShownMax))));
        }
    }

    private string HowOf(CustodyEntry entry, DateTimeOffset? due) => Say(
        LedgerSentences.ByEntry,
        ("kind", entry.Kind),
        ("id", entry.Id.Value),
        ("by", entry.By.Value),
        ("due", due is { } at ? Say(LedgerSentences.Due, ("at", Time(at))) : ""));

    /// <summary>The function and the value of a use, as far as they are stated.</summary>
    internal static string WhatOf(ToolUse use)
    {
        string value = use.Value is { } number ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $", {number} {use.Unit.Value}") : "";
        return (use.Function is { } function ? ", " + function : "") + value;
    }

    private static string NameOf(ExposureItem item) => item.Thing.IsEmpty ? item.Kind == ExposureKind.Between ? "between jobs" : item.Holder.ToString() : item.Thing.ToString();

    private string AccountedOf(DateTimeOffset? since) => since is { } at ? Time(at) : Say(LedgerSentences.NeverAccounted);

    private string SinceOf(DateTimeOffset? since) => since is { } at ? Time(at) : Say(LedgerSentences.NotKnown);

    private string Time(DateTimeOffset at) => voice.Time(at);

    private string Say(ReasonKind kind, params ReadOnlySpan<(string Name, string Value)> values) => voice.Say(kind, values);
}
