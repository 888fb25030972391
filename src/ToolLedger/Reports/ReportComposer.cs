using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>Sets a report down on a page: the conclusion first, then the supervisor's questions in their order, then cautions, and the digests in an annex. A question has the same number
/// whether one kit is told or many.</summary>
internal sealed class ReportComposer(ShiftReportInput input, IReadOnlyList<SessionTally> sessions, IReadOnlyList<Reads.ReadSession> foreign, IReportPage page)
{
    private const int RowsShown = 5;
    private readonly ReportVoice voice = new(input.Wording, input.Calendar);

    internal string Compose()
    {
        page.Title(voice.Say(ReportSentences.Title, ("at", voice.Time(input.MadeAt)), ("site", input.Calendar.Name)));
        if (input.IsPolicyDefault)
        {
            page.Paragraph(voice.Say(ReportSentences.DefaultPolicy, ("site", input.Calendar.Name)));
        }

        if (input.Results.Count > 1)
        {
            ComposeMany();
        }
        else
        {
            ComposeOne(input.Results[0]);
        }

        page.Footing(voice.Say(ReportSentences.Cautions));
        page.Items([.. ReportCautions.All.Select(caution => voice.Say(caution))]);
        PutDigests();
        return page.Finish();
    }

    private void ComposeOne(ReconciliationResult result)
    {
        var kit = new KitSections(voice, page, result, GateOf(result), input.Ledger);
        page.Heading(2, KitTitle(result));
        kit.PutConclusion();
        PutSessions("1. ");
        PutQuestions(kit);
        PutAlsoRead("9. ");
    }

    private void ComposeMany()
    {
        page.Heading(2, voice.Say(ReportSentences.Summary, ("count", ReportVoice.Text(input.Results.Count))));
        page.Rows("", "state", "kit", [.. input.Results.OrderBy(static result => Urgency(result.Kit.State)).Select(Summary)]);
        PutSessions("1. ");
        foreach (ReconciliationResult result in input.Results)
        {
            var kit = new KitSections(voice, page, result, GateOf(result), input.Ledger);
            page.Heading(2, KitTitle(result));
            kit.PutConclusion();
            PutQuestions(kit);
        }

        page.Heading(2, voice.Say(ReportSentences.AllKits));
        PutAlsoRead("9. ");
    }

    internal static void PutQuestions(KitSections kit)
    {
        kit.PutSettled("2. ");
        kit.PutOpen("3. ");
        kit.PutUnseen("4. ");
        kit.PutExposure("5. ");
        kit.PutSigning("6. ");
        kit.PutCalibration("7. ");
        kit.PutChanges("8. ");
    }

    internal GateAnswer? GateOf(ReconciliationResult result) => input.Gates.FirstOrDefault(gate => gate.Kit == result.Manifest.Id);

    internal static int Urgency(KitState state) => state switch
    {
        KitState.Discrepant => 0,
        KitState.NoValidRead => 1,
        KitState.Open => 2,
        _ => 3,
    };

    internal string KitTitle(ReconciliationResult result) => voice.Say(
        ReportSentences.Kit,
        ("kit", result.Manifest.Id.Value),
        ("revision", ReportVoice.Text(result.Manifest.Revision)),
        ("title", result.Manifest.Title),
        ("at", voice.Time(result.AsOf)));

    internal ReportRow Summary(ReconciliationResult result)
    {
        // A page that shows the first open line of each kit beside it has no need of the list.
        List<LineConclusion> chase = page.ShowsEvidence ? [] : [.. result.AllLines.Where(static line => !line.IsAccounted)];
        string open = chase.Count == 0 ? "" : "; open: " + voice.List(chase.Select(line => $"line {line.Label} {voice.What(line.Line)}"), chase.Count, RowsShown);
        bool isOpened = result.Findings.Any(static finding => finding.Reason.Kind == PeopleReasons.FindingOpened);
        string gate = GateOf(result) is { } answer ? voice.Say(ReportSentences.GateInSummary, ("answer", StatusWords.Print(answer))) : "";
        return new ReportRow("", StatusWords.Print(result.Kit.State), voice.Say(
            ReportSentences.SummaryKit,
            ("kit", result.Manifest.Id.Value),
            ("settled", ReportVoice.Text(result.Kit.CountOf(LineState.Accounted))),
            ("total", ReportVoice.Text(result.Kit.LineCount)),
            ("opened", isOpened ? voice.Say(ReportSentences.OpenedInSummary) : ""),
            ("gate", gate),
            ("open", open)));
    }

    internal void PutSessions(string number)
    {
        page.Heading(3, number + voice.Say(ReportSentences.IsReadGood));
        if (sessions.Count == 0)
        {
            page.Paragraph(NoSession());
        }

        var rows = new SessionRows(voice);
        page.Rows("", "health", "session", [.. sessions.Select(tally => rows.Of(tally)), .. foreign.Select(session => rows.OfOtherKits(session))]);
        page.Items([.. LeftOut(), .. input.Refused.Where(static refused => refused.Count > 0).Select(Refused)]);
        if (sessions.Count > 0 && input.Results.All(static result => result.NoReadUsed))
        {
            page.Paragraph(voice.Say(ReportSentences.NoReadUsed));
        }
    }

    private string NoSession() => voice.Say(foreign.Count > 0 ? ReportSentences.NoSessionOfKits : ReportSentences.NoSession);

    private IEnumerable<string> LeftOut() =>
        from result in input.Results
        from summary in result.Sessions
        where summary.LeftOut is not null
        select voice.Say(ReportSentences.SessionLeftOut, ("kit", result.Manifest.Id.Value), ("why", voice.Say(summary.LeftOut!)));

    private string Refused(RefusedRows refused) => voice.Say(
        ReportSentences.RowsRefused,
        ("count", ReportVoice.Text(refused.Count)),
        ("source", refused.Source),
        ("first", voice.List(
            refused.First.Select(row => $"line {ReportVoice.Text(row.LineNumber)}: {voice.Say(row.Reason).TrimEnd('.')} ({row.Reason.Code})"),
            (int)Math.Min(int.MaxValue, Math.Max(refused.Count, refused.First.Count)),
            Math.Min(RowsShown, refused.First.Count))));

    internal void PutAlsoRead(string number)
    {
        page.Heading(3, number + voice.Say(ReportSentences.AlsoRead));
        List<ReportRow> rows = [.. sessions.SelectMany(tally => new OtherReads(voice, tally).Rows())];
        if (rows.Count == 0)
        {
            bool isSilent = sessions.All(static tally => tally.Session.ReadCount == 0);
            page.Paragraph(sessions.Count == 0 ? NoSession() : voice.Say(isSilent ? ReportSentences.NothingRead : ReportSentences.NothingElseRead));
        }

        page.Rows("", "explanation", "reads", rows);
    }

    private void PutDigests()
    {
        page.Footing(voice.Say(ReportSentences.RestsOn));
        var lines = new List<string>();
        foreach ((Digest digest, string version) in input.Results.Select(static result => (result.PolicyDigest, result.LibraryVersion)).Distinct())
        {
            string name = input.PolicyDigest.IsEmpty ? input.PolicyName ?? "-" : $"{input.PolicyName ?? "-"} {input.PolicyDigest.ToShortString()}";
            lines.Add($"{voice.Say(ReportSentences.Policy, ("name", name), ("digest", digest.ToShortString()), ("version", version))} {PolicyRules.Say(input, digest, voice)}".TrimEnd());
        }

        lines.Add(voice.Say(ReportSentences.Inputs, ("inputs", string.Join(", ", input.Results.SelectMany(Inputs).Distinct(StringComparer.Ordinal)))));
        if (input.Sources.Count > 0)
        {
            lines.Add(voice.Say(ReportSentences.Sources, ("sources", string.Join(", ", input.Sources.Select(static source => $"{source.Name} {source.Digest.ToShortString()}")))));
        }

        page.Items(lines);
    }

    private static IEnumerable<string> Inputs(ReconciliationResult result) =>
        result.Inputs.Select(static pair => $"{pair.Name} {pair.Digest.ToShortString()}");
}
