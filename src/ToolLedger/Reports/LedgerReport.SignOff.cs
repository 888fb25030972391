using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Holds;
using ToolLedger.Ledger;
using ToolLedger.Reconciliation;

namespace ToolLedger.Reports;

/// <content>The sheet that is signed.</content>
public sealed partial class LedgerReport
{
    private const int OpenLinesShown = 12;

    /// <summary>A signed reconciliation on one page, with room for signatures on paper.</summary>
    /// <param name="signOff">The signed reconciliation.</param>
    /// <returns>The page. At most twelve open lines are told one by one; the full report tells all.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="signOff"/> is null.</exception>
    public LedgerPage SignOffSheet(SignedReconciliation signOff)
    {
        ArgumentNullException.ThrowIfNull(signOff);
        return Page(page => Put(page, signOff));
    }

    private void Put(IReportPage page, SignedReconciliation signOff)
    {
        SignedLine[] open = [.. signOff.Lines.Where(static line => !line.IsAccounted)];
        page.Title(Say(LedgerSentences.SheetTitle, ("kit", signOff.Kit.Value), ("revision", ReportVoice.Text(signOff.Revision)), ("at", Time(signOff.AsOf))));
        page.Paragraph(Say(
            LedgerSentences.SheetState,
            ("state", signOff.State.ToUpperInvariant()),
            ("open", ReportVoice.Text(open.Length)),
            ("total", ReportVoice.Text(signOff.Lines.Count)),
            ("holder", state.Custody.HolderOf(signOff.Kit, signOff.AsOf).ToString())));
        page.Rows("line", "state", "what",
        [
            .. open.Take(OpenLinesShown).Select(line => new ReportRow(line.Label, line.State.ToUpperInvariant(), line.Description)),
            .. signOff.Lines.Where(static line => line.IsAccounted).GroupBy(static line => line.Basis, StringComparer.Ordinal)
                .Select(basis => new ReportRow("", basis.Key.ToUpperInvariant(), Say(LedgerSentences.SheetSettled, ("count", ReportVoice.Text(basis.Count())), ("lines", Ranges([.. basis.Select(static line => line.Label)]))))),
        ]);
        if (open.Length > OpenLinesShown)
        {
            page.Paragraph(Say(LedgerSentences.SheetMore, ("count", ReportVoice.Text(open.Length - OpenLinesShown))));
        }

        foreach (HoldStatus hold in state.Holds.HeldAt(asOf).Where(hold => hold.Declaration.Kit == signOff.Kit))
        {
            page.Rows("", "status", "hold", [.. RowsOf(hold).Take(2)]);
        }

        PutSignatures(page, signOff);
    }

    private void PutSignatures(IReportPage page, SignedReconciliation signOff)
    {
        page.Heading(2, Say(LedgerSentences.SheetSigned));
        page.Items(
        [
            .. signOff.FurtherSignatures.Prepend(signOff.SignedBy).Select(signature => signature.Role.IsEmpty
                ? $"{signature.By.Value}, {Time(signature.At)}"
                : $"{signature.By.Value} ({signature.Role.Value}), {Time(signature.At)}"),
            Say(LedgerSentences.SheetSignHere),
            Say(LedgerSentences.SheetSignHere),
        ]);
        IReadOnlyList<Amendment> amendments = state.AmendmentsOf(signOff.Id);
        if (amendments.Count > 0)
        {
            page.Paragraph(Say(LedgerSentences.SheetAmended, ("ids", string.Join(", ", amendments.Select(static amendment => amendment.Id.Value)))));
        }

        page.Paragraph(Say(
            LedgerSentences.SheetDigests,
            ("result", signOff.ResultDigest.ToShortString()),
            ("policy", signOff.PolicyDigest.ToShortString()),
            ("version", signOff.LibraryVersion)));
    }

    /// <summary>Numbers that follow each other as ranges: 1-6, 8, 9.</summary>
    private static string Ranges(IReadOnlyList<string> labels)
    {
        var parts = new List<string>();
        int index = 0;
        while (index < labels.Count)
        {
            int last = index;
            while (last + 1 < labels.Count && IsNext(labels[last], labels[last + 1]))
            {
                last++;
            }

            parts.Add(last - index < 2 ? labels[index] : $"{labels[index]}-{labels[last]}");
            index = last - index < 2 ? index + 1 : last + 1;
        }

        return string.Join(", ", parts);
    }

    private static bool IsNext(string one, string other) =>
        int.TryParse(one, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out int first)
        && int.TryParse(other, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out int second)
        && second == first + 1;
}
