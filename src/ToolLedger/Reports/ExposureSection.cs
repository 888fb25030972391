using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Ledger;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>What is known of since when equipment is exposed: openings of the kit, how long ago each line was accounted for, and items on no list. Custody is not known.</summary>
internal sealed class ExposureSection(ReportVoice voice, IReportPage page, ReconciliationResult result, LedgerState? ledger)
{
    private const int Shown = 20;

    internal void Put(string number)
    {
        page.Heading(3, number + voice.Say(ReportSentences.Exposure));
        page.Paragraph(voice.Say(ledger is null ? ReportSentences.ExposureNotRecorded : LedgerSentences.ShiftRecorded));
        page.Rows("", "event", "since when", ledger is null
            ? [.. Openings(), .. Jobs(), .. OpenLines(), .. SettledLines(), .. Unlisted()]
            : [.. Holder(ledger), .. Exposed(ledger), .. Held(ledger), .. Openings(), .. Jobs(), .. SettledLines(), .. Unlisted()]);
    }

    internal static string Say(ReportVoice voice, KitOpening opening) => voice.Say(
        ReportSentences.Opened,
        ("kit", opening.Kit.Value),
        ("at", voice.Time(opening.At)),
        ("by", opening.By.Value),
        ("where", opening.Where.IsEmpty ? "" : voice.Say(ReportSentences.OpenedWhere, ("where", opening.Where.Value))));

    internal static string Say(ReportVoice voice, UnlistedItemReport report)
    {
        string[] seen = [.. new[] { report.LastSeenAt is { } at ? voice.Time(at) : "", report.LastSeenWhere.IsEmpty ? "" : report.LastSeenWhere.Value }.Where(static part => part.Length > 0)];
        return voice.Say(
            ReportSentences.Unlisted,
            ("what", report.Description),
            ("by", report.By.Value),
            ("at", voice.Time(report.At)),
            ("seen", seen.Length > 0 ? string.Join(", ", seen) : "-"),
            ("touched", report.TouchedSince.Count > 0 ? string.Join(", ", report.TouchedSince.Select(static place => place.Value)) : "-"));
    }

    private IEnumerable<ReportRow> Holder(LedgerState known)
    {
        if (KitExposure.HolderOf(known, result) is { } span)
        {
            yield return new ReportRow("", "WITH", voice.Say(LedgerSentences.ShiftHolder, ("kit", result.Manifest.Id.Value), ("holder", span.Holder.ToString()), ("since", voice.Time(span.From))) + ".");
        }
    }

    /// <summary>Open lines, those with the same exposure together.</summary>
    private IEnumerable<ReportRow> Exposed(LedgerState known) => KitExposure.OpenLines(known, result)
        .GroupBy(one => (Since: one.Exposure.Since, Things: string.Join("; ", one.Exposure.Things)), static one => one.Label)
        .Select(alike => new ReportRow("", "EXPOSED", voice.Say(
            LedgerSentences.ShiftExposed,
            ("lines", (alike.Count() == 1 ? "line " : "lines ") + voice.List(alike, alike.Count(), Shown)),
            ("things", alike.Key.Things.Length > 0 ? alike.Key.Things : voice.Say(LedgerSentences.NothingAffected)),
            ("since", alike.Key.Since is { } since ? voice.Time(since) : voice.Say(LedgerSentences.NeverAccounted))) + "."));

    private IEnumerable<ReportRow> Held(LedgerState known) => KitExposure.Holds(known, result)
        .Select(hold => new ReportRow("", "HELD", voice.Say(
            LedgerSentences.ShiftHeld,
            ("what", hold.Declaration.Description),
            ("id", hold.Declaration.Id.Value),
            ("at", voice.Time(hold.Declaration.At)),
            ("things", hold.Affected.Count > 0 ? string.Join("; ", hold.Affected) : voice.Say(LedgerSentences.NothingAffected))) + "."));

    private IEnumerable<ReportRow> Openings()
    {
        foreach (KitOpening opening in result.Openings.Take(Shown))
        {
            yield return new ReportRow("", "OPENED", Say(voice, opening) + ".");
        }

        if (result.Openings.Count > Shown)
        {
            yield return new ReportRow("", "OPENED", voice.Say(ReportSentences.AndMore, ("count", ReportVoice.Text(result.Openings.Count - Shown))) + ".");
        }
    }

    /// <summary>What the kit was used on, as far as consumables tell.</summary>
    private IEnumerable<ReportRow> Jobs()
    {
        foreach (ConsumableUse use in result.JobRecords.Take(Shown))
        {
            yield return new ReportRow("", "JOB", voice.Say(
                ReportSentences.JobRecord,
                ("job", use.Job),
                ("used", new Quantity(use.Used, use.Unit).ToString()),
                ("scrapped", new Quantity(use.Scrapped, use.Unit).ToString()),
                ("line", ReportVoice.Text(use.LineNumber)),
                ("kit", use.Kit.Value),
                ("by", use.By.Value),
                ("at", voice.Time(use.At))) + ".");
        }

        if (result.JobRecords.Count > Shown)
        {
            yield return new ReportRow("", "JOB", voice.Say(ReportSentences.AndMore, ("count", ReportVoice.Text(result.JobRecords.Count - Shown))) + ".");
        }
    }

    /// <summary>Open lines, those with the same hint together.</summary>
    private IEnumerable<ReportRow> OpenLines() => result.ChaseList
        .GroupBy(line => Hint(line.Evidence), static line => line.Label, StringComparer.Ordinal)
        .Select(alike => new ReportRow("", "OPEN", voice.Say(
            ReportSentences.ExposedBefore,
            ("lines", (alike.Count() == 1 ? "line " : "lines ") + voice.List(alike, alike.Count(), Shown)),
            ("hint", alike.Key))));

    private IEnumerable<ReportRow> SettledLines()
    {
        if (result.AllLines.Min(static line => line.Evidence.OldestAt) is { } oldest)
        {
            yield return new ReportRow("", "SETTLED", voice.Say(ReportSentences.SettledSince, ("at", voice.Time(oldest))) + ".");
        }
    }

    private IEnumerable<ReportRow> Unlisted() => result.UnlistedItems.Select(report => new ReportRow("", StatusWords.OnNoList, Say(voice, report) + "."));

    private string Hint(LineEvidence evidence)
    {
        string heard = evidence.LastSeen is { } seen ? voice.Say(ReportSentences.TagLastHeard, ("at", voice.Time(seen))) : "";
        string said = evidence.LatestAt is { } latest
            ? voice.Say(ReportSentences.LastCounted, ("at", voice.Time(latest)), ("by", string.Join(", ", evidence.Persons.Select(static person => person.Value))))
            : "";
        return heard + said;
    }
}
