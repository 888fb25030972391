using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Calibration;
using ToolLedger.Ledger;
using ToolLedger.Presence;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>The sections about one kit, each an answer to one question.</summary>
internal sealed class KitSections(ReportVoice plain, IReportPage page, ReconciliationResult result, GateAnswer? gate, LedgerState? ledger)
{
    private const int SessionsNamed = 3;

    private static readonly LineState[] FromBestToWorst =
        [LineState.Accounted, LineState.Weak, LineState.NotRead, LineState.NotAssessed, LineState.Partial, LineState.Conflict];

    private readonly ReportVoice voice = plain.On(result.AsOf);

    private string Total => ReportVoice.Text(result.Kit.LineCount);

    /// <summary>The state of the kit and how many lines stand where.</summary>
    internal void PutState()
    {
        string counts = string.Join(", ", FromBestToWorst
            .Where(state => result.Kit.CountOf(state) > 0)
            .Select(state => $"{ReportVoice.Text(result.Kit.CountOf(state))} {Words.Of(state)}"));
        page.Paragraph(voice.Say(
            ReportSentences.Conclusion,
            ("state", StatusWords.Print(result.Kit.State)),
            ("total", Total),
            ("counts", counts.Length > 0 ? counts : "0")), StatusWords.Print(result.Kit.State));
    }

    /// <summary>The conclusion first: a reader who stops here knows whether to act.</summary>
    internal void PutConclusion()
    {
        PutState();
        List<Reason> why = [.. result.Kit.Reasons.Where(static reason => reason.Kind != ReconciliationReasons.KitLinesOpen)];
        if (why.Count > 0)
        {
            page.Paragraph(ReportVoice.Sentence(voice.Join(why)));
        }

        string notInDate = string.Join("; ", new[]
            {
                ("overdue", CalibrationState.Overdue), ("no record that counts", CalibrationState.Unknown), ("rejected", CalibrationState.Rejected), ("inactive", CalibrationState.Inactive),
                ("suspended", CalibrationState.Suspended), ("limited", CalibrationState.Limited),
            }
            .Select(group => (group.Item1, Numbers: result.AllLines.Where(line => line.Calibration?.State == group.Item2).Select(static line => line.Label).ToArray()))
            .Where(static group => group.Numbers.Length > 0)
            .Select(group => $"{group.Item1}, {Lines(group.Numbers)}"));
        if (notInDate.Length > 0)
        {
            page.Paragraph(voice.Say(ReportSentences.NotInDate, ("lines", notInDate)));
        }

        if (result.UnlistedItems.Count > 0)
        {
            page.Paragraph(voice.Say(ReportSentences.UnlistedItems, ("count", ReportVoice.Text(result.UnlistedItems.Count))));
        }

        if (result.Kit.State == KitState.Complete && result.Signatures.Count == 0)
        {
            page.Paragraph(voice.Say(ReportSentences.NotSigned));
        }

        foreach (Finding opened in result.Findings.Where(IsOpening))
        {
            page.Paragraph(Noticed(opened));
        }

        if (gate is not null)
        {
            page.Paragraph(voice.Say(
                ReportSentences.Gate,
                ("answer", StatusWords.Print(gate)),
                ("at", voice.Time(gate.AsOf)),
                ("why", voice.Join(gate.Reasons)),
                ("next", " " + (gate.Next is { } next ? ReportVoice.Sentence(voice.Say(next.Reason).TrimEnd('.')) : new SigningSection(voice, page, result).BesideGate()))), StatusWords.Print(gate));
        }

        bool isComplete = result.Kit.State == KitState.Complete;
        string means = isComplete ? voice.Say(ReportSentences.CompleteMeans) : "";
        string stop = isComplete && gate is not { IsSatisfied: false } ? "" : voice.Say(ReportSentences.NotCompleteMeans);
        page.Meaning(means, stop);
    }

    internal void PutSettled(string number)
    {
        List<LineConclusion> settled = [.. result.AllLines.Where(static line => line.IsAccounted)];
        page.Heading(3, number + voice.Say(ReportSentences.Settled, ("count", ReportVoice.Text(settled.Count)), ("total", Total)));
        string[] readIn = [.. settled.Where(IsRead).Select(line => SessionsOf(line.Evidence)).Distinct(StringComparer.Ordinal)];
        bool isSameForAll = readIn.Length == 1;
        page.Rows("line", "basis", "what and how", [.. settled.Select(line => Settled(line, isSameForAll))]);
        page.Items([.. result.NotExpected.Select(line => voice.Say(
            ReportSentences.NotExpected,
            ("line", line.Label),
            ("what", voice.What(line.Line)),
            ("why", voice.Say(line.Reason).TrimEnd('.'))))]);
        List<string> legend = isSameForAll ? [voice.Say(ReportSentences.AllReadIn, ("sessions", readIn[0]))] : [];
        if (readIn.Length > 0)
        {
            legend.Add(voice.Say(ReportSentences.ReadLegend));
        }

        if (settled.Exists(static line => IsRead(line) && line.Evidence.PassCount > 1))
        {
            legend.Add(voice.Say(ReportSentences.PassLegend));
        }

        if (settled.Exists(static line => line.IsEpcOnly))
        {
            legend.Add(voice.Say(ReportSentences.EpcOnly));
        }

        if (settled.Exists(IsSharedByMore))
        {
            legend.Add(voice.Say(ReportSentences.LinesShared));
        }

        if (legend.Count > 0)
        {
            page.Paragraph(string.Join(' ', legend));
        }

        PutStatedRisk();
    }

    /// <summary>The risk of the settled lines together, and by what it was weighed; a page with a section about the rule tells it there.</summary>
    private void PutStatedRisk()
    {
        if (page.ShowsEvidence || ModelUse.Of(result) is not { Count: > 0 } models)
        {
            return;
        }

        bool isOwnUsed = models[0].Number == 0;
        (string, string) digest = ("digest", result.PolicyDigest.ToShortString());
        string weighed = models is [{ Number: 0 }] ? voice.Say(ReportSentences.WeighedByOwn, digest) : voice.Say(
            ReportSentences.WeighedByModels,
            ("count", ReportVoice.Text(models.Count - (isOwnUsed ? 1 : 0))),
            ("own", isOwnUsed ? voice.Say(ReportSentences.WeighedByOwnToo) : ""),
            digest);
        page.Paragraph(RiskTable.StatedOf(result) is { } stated ? $"{ReportVoice.Sentence(voice.Say(stated).TrimEnd('.'))} {weighed}" : weighed);
    }

    internal void PutOpen(string number)
    {
        IReadOnlyList<LineConclusion> chase = result.ChaseList;
        page.Heading(3, number + (chase.Count == 0
            ? voice.Say(ReportSentences.NothingOpen, ("total", Total))
            : voice.Say(ReportSentences.Open, ("count", ReportVoice.Text(chase.Count)), ("total", Total))));
        page.Rows("order", "state", "line, why, and what settles it fastest", [.. OpenGroup.Of(chase).Select(Open)]);
        page.Items([.. result.Findings
            .Where(finding => finding.Level != FindingLevel.Session && finding.Reason.Kind != ReconciliationReasons.CalibrationNotFit && !IsOpening(finding)
                && finding.Reason.Kind != RiskReasons.RiskStated)
            .Select(Noticed)]);
    }

    internal void PutUnseen(string number)
    {
        var totals = new ReportTotals(voice, result.Totals);
        page.Heading(3, number + totals.Heading());
        foreach (string sentence in totals.Sentences())
        {
            page.Paragraph(sentence);
        }

        List<UnseenPart> parts = UnseenPart.Of(result);
        if (parts.Count == 0)
        {
            page.Paragraph(voice.Say(ReportSentences.NothingUnseen));
        }

        page.Rows("", "by people", "who, and what", [.. parts.GroupBy(SaidBy).Select(Unseen)]);
    }

    internal void PutCalibration(string number)
    {
        page.Heading(3, number + voice.Say(ReportSentences.Calibration, ("day", voice.Day(result.AsOf))));
        List<LineConclusion> asked = [.. result.AllLines.Where(static line => line.Calibration is { State: not CalibrationState.NotRequired })];
        if (asked.Count == 0)
        {
            page.Paragraph(voice.Say(ReportSentences.NothingToCalibrate));
        }

        page.Rows("line", "calibration", "what and why", [.. asked.Select(line => new ReportRow(
            line.Label,
            StatusWords.Print(line.Calibration!.State),
            $"{voice.What(line.Line)}: {voice.Say(line.Calibration.Reason)}"))]);
        new UseSection(voice, page, result, ledger).Put();
    }

    internal void PutExposure(string number) => new ExposureSection(voice, page, result, ledger).Put(number);

    internal void PutSigning(string number) => new SigningSection(voice, page, result).PutWho(number);

    internal void PutChanges(string number) => new SigningSection(voice, page, result).PutChanges(number);

    /// <summary>It makes the conclusion old, so it stands beside it, and not with every line again.</summary>
    private static bool IsOpening(Finding finding) => finding.Reason.Kind == PeopleReasons.FindingOpened;

    private static bool IsRead(LineConclusion line) => line.Basis == AccountingBasis.Read || line.OtherBases.Contains(AccountingBasis.Read);

    /// <summary>Its sentence names another number of lines than the heading does.</summary>
    private bool IsSharedByMore(LineConclusion line) => IsWeighed(line) && line.Evidence.Risk?.LineCount != result.Kit.LineCount;

    private static bool IsWeighed(LineConclusion line) => line.Reasons.Any(static reason => reason.Kind == PresenceReasons.RiskWithin);

    /// <summary>A thing to search, with the place it has in the kit.</summary>
    private string WhatAndWhere(LineConclusion line)
        => line.Line.Location is { } location ? $"{voice.What(line.Line)} ({location})" : voice.What(line.Line);

    private ReportRow Settled(LineConclusion line, bool isSameForAll)
    {
        IEnumerable<Reason> how = line.Reasons.Where(static reason => reason.Kind != PresenceReasons.EpcOnly && reason.Kind != PresenceReasons.EnoughLooks
            && reason.Kind != PeopleReasons.OpenedSince);
        bool isRead = IsRead(line);
        string evidence = !isRead ? "" : voice.Say(
            IsWeighed(line) ? ReportSentences.ReadEvidenceRest : ReportSentences.ReadEvidence,
            ("looks", ReportVoice.Text(line.Evidence.LookCount)),
            ("antennas", ReportVoice.Text(line.Evidence.AntennaCount)),
            ("passes", line.Evidence.PassCount > 1 ? voice.Say(ReportSentences.ReadPasses, ("passes", ReportVoice.Text(line.Evidence.PassCount))) : ""),
            ("sessions", isSameForAll ? "" : voice.Say(ReportSentences.ReadIn, ("sessions", SessionsOf(line.Evidence)))),
            ("last", line.Evidence.LastSeen is { } last ? voice.Time(last) : "-"));
        string basis = StatusWords.Print(line.Basis);
        return new ReportRow(
            line.Label,
            line.IsEpcOnly && line.Basis == AccountingBasis.Read ? basis + ", EPC only" : basis,
            $"{voice.What(line.Line)}: {string.Join("; ", new[] { voice.Join(how), evidence }.Where(static text => text.Length > 0))}")
        {
            Lines = [line],
        };
    }

    private string SessionsOf(LineEvidence evidence)
    {
        string[] named =
        [
            .. result.Sessions
                .Where(summary => evidence.Sessions.Contains(summary.Session.Id))
                .Select(summary => voice.Say(
                    ReportSentences.SessionAt, ("session", summary.Session.Id.Value), ("station", summary.Session.Presentation.Station.Id.Value))),
        ];
        return voice.List(named, named.Length, SessionsNamed);
    }

    /// <summary>The open line that comes first in the order of the chase, and how many more are open for the very same reasons; null if none is open.</summary>
    internal ReportRow? FirstOpen()
    {
        IReadOnlyList<LineConclusion> chase = result.ChaseList;
        if (chase.Count == 0)
        {
            return null;
        }

        int alike = OpenGroup.Of(chase)[0].Lines.Count;
        ReportRow first = Open(OpenGroup.Of([chase[0]])[0]);
        return first with { Parts = first.Parts! with { Lines = [voice.List(first.Parts.Lines, alike, 1)] } };
    }

    /// <summary>The first open lines in the order of the chase, each for itself.</summary>
    internal IReadOnlyList<ReportRow> OpenOneByOne(int limit) => [.. result.ChaseList.Take(limit).Select(line => Open(OpenGroup.Of([line])[0]))];

    private ReportRow Open(OpenGroup group)
    {
        string rank = ReportVoice.Text(group.FirstRank);
        string next = group.Next is { } step ? voice.Say(step).TrimEnd('.') : "-";
        string[] lines = [.. group.Lines.Select(line => $"line {line.Label} {WhatAndWhere(line)}")];
        string why = voice.Join(page.ShowsEvidence ? group.Reasons.Where(static reason => !RiskTable.Shows(reason)) : group.Reasons);
        return new ReportRow(
            group.Lines.Count == 1 ? rank + "." : $"{rank}-{ReportVoice.Text(group.FirstRank + group.Lines.Count - 1)}.",
            StatusWords.Print(group.State),
            voice.Say(ReportSentences.OpenLine, ("lines", string.Join(", ", lines)), ("why", why), ("next", next)))
        {
            Lines = group.Lines,
            Parts = new OpenParts(lines, ReportVoice.Sentence(why), voice.Say(PageSentences.Next, ("next", next))),
        };
    }

    /// <summary>Parts that the same persons counted stand together; when they did is told with the lines themselves.</summary>
    private ReportRow Unseen(IGrouping<(string Word, string Persons), UnseenPart> group)
    {
        string parts = string.Join("; ", group.Select(part => $"line {part.Conclusion.Label} {voice.Say(part.What)}"));
        return new ReportRow("", group.Key.Word, group.Key.Persons.Length > 0 ? $"{group.Key.Persons}: {parts}." : parts + ".");
    }

    private (string Word, string Persons) SaidBy(UnseenPart part)
    {
        if (part.Said.Count == 0)
        {
            return (StatusWords.NotCounted, "");
        }

        string persons = string.Join(", ", part.Persons);
        bool isSighted = part.Said.Any(static reason => reason.Kind == ReconciliationReasons.Sighted);
        return (isSighted ? "SIGHTED" : "COUNTED", part.Conclusion.Evidence.Witness is { IsEmpty: false } witness
            ? voice.Say(ReportSentences.ByWithWitness, ("by", persons), ("witness", witness.Value))
            : voice.Say(ReportSentences.By, ("by", persons)));
    }

    private string Noticed(Finding finding) => voice.Say(
        ReportSentences.Noticed,
        ("about", Lines(finding.LineLabels)),
        ("finding", voice.Say(finding.Reason).TrimEnd('.')));

    private string Lines(IReadOnlyList<string> numbers) => numbers.Count switch
    {
        0 => "kit",
        > 1 when numbers.Count == result.Kit.LineCount => voice.Say(ReportSentences.AllLines),
        1 => "line " + numbers[0],
        _ => "lines " + voice.List(numbers, numbers.Count, 20),
    };
}
