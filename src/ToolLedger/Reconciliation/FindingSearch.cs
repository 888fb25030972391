using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Calibration;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>Findings about a kit and its lines: shared causes shown once, tags to look after, hints, calibration. They change no conclusion.</summary>
internal sealed class FindingSearch
{
    private readonly ReconciliationScope scope;
    private readonly KitManifest manifest;
    private readonly ToolReadsCollector collector;
    private readonly IReadOnlyList<JudgedLine> lines;
    private readonly List<Finding> findings = [];

    public FindingSearch(ReconciliationScope scope, KitManifest manifest, ToolReadsCollector collector, IReadOnlyList<JudgedLine> lines)
    {
        this.scope = scope;
        this.manifest = manifest;
        this.collector = collector;
        this.lines = lines;
    }

    public IReadOnlyList<Finding> Search()
    {
        var shared = new SharedCauseSearch(scope.Policy.Findings, manifest, lines);
        findings.AddRange(shared.Search());
        if (lines.Any(static line => line.Reads.Mismatches.Count > 0))
        {
            SearchMismatches();
        }

        SearchMarks();
        foreach (JudgedLine line in lines)
        {
            if (line.Findings.Count > 0)
            {
                findings.AddRange(line.Findings);
            }

            SearchTags(line);
            SearchFadingTags(line);
            SearchSuspectTags(line);
            SearchProximity(line);
            SearchElsewhere(line);
            SearchCalibration(line);
            SearchOtherManifests(line);
            if (!shared.IsWholeBag)
            {
                SearchBrief(line);
            }
        }

        return findings;
    }

    /// <summary>All marks that do not follow the site's form, told once.</summary>
    private void SearchMarks()
    {
        MarkFormat form = scope.Policy.Marks;
        JudgedLine[] other = form.IsAny ? [] : [.. lines.Where(line => line.Conclusion.Line.Tool is { } tool && form.WhyNot(tool) is not null)];
        if (other.Length > 0)
        {
            findings.Add(new Finding(
                FindingLevel.Kit, new Reason(ReconciliationReasons.FindingMarkFormat, ("count", other.Length.ToString(CultureInfo.InvariantCulture)), ("form", form.ToString())))
            {
                LineNumbers = [.. other.Select(static line => line.Conclusion.OuterNumber).Distinct().Order()],
                LineLabels = [.. other.Select(static line => line.Conclusion.Label)],
            });
        }
    }

    /// <summary>One proposal for each sighting that shows a mismatch which no quarantine has taken up yet.</summary>
    private void SearchMismatches()
    {
        foreach (IGrouping<Sighting, (MarkMismatch Mismatch, JudgedLine Line)> group in lines
            .SelectMany(static line => line.Reads.Mismatches.Select(mismatch => (mismatch, line)))
            .GroupBy(static pair => pair.mismatch.Sighting)
            .OrderBy(static group => group.Key.At)
            .ThenBy(static group => group.Key.Tool.Value, StringComparer.Ordinal)
            .ThenBy(static group => group.Key.MarkRead, StringComparer.Ordinal))
        {
            Sighting sighting = group.Key;
            TagBinding[] doubtful = [.. group
                .SelectMany(static pair => pair.Line.Reads.SuspectTags)
                .Where(binding => sighting.At >= binding.From && !scope.Input.Tags.QuarantinesOf(binding).Any(quarantine => quarantine.StandsAt(scope.AsOf)))];
            if (doubtful.Length > 0)
            {
                string tools = string.Join(", ", doubtful.Select(static binding => binding.Tool.Value).Distinct(StringComparer.Ordinal));
                findings.Add(new Finding(
                    FindingLevel.Kit,
                    new Reason(ReconciliationReasons.QuarantineProposed,
                        ("by", sighting.By.Value), ("mark", sighting.MarkRead), ("tool", sighting.Tool.Value), ("tools", tools)))
                {
                    LineNumbers = [.. group.Select(static pair => pair.Line.Conclusion.OuterNumber).Distinct().Order()],
                    LineLabels = [.. group.Select(static pair => pair.Line.Conclusion.Label)],
                    Tags = [.. doubtful.Select(static binding => binding.Tag).Distinct()],
                });
            }
        }
    }

    private void SearchSuspectTags(JudgedLine line)
    {
        foreach (TagBinding binding in line.Reads.SuspectTags)
        {
            findings.Add(new Finding(
                FindingLevel.Line, new Reason(ReconciliationReasons.HistorySuspect, ("tag", binding.Tag.ToString()), ("at", scope.Time(binding.From))))
            {
                LineNumbers = [line.Conclusion.OuterNumber],
                LineLabels = [line.Conclusion.Label],
                Tags = [binding.Tag],
            });
        }
    }

    /// <summary>A tag heard for a moment on one antenna and then no more walked past or stood in a pocket as likely as it lay in the bag.</summary>
    private void SearchBrief(JudgedLine line)
    {
        if (line is not { Conclusion.State: LineState.Weak, Reads: { Best.Antennas: [{ Antenna.IsKnown: true } antenna], FirstSeen: { } first, LastSeen: { } last } })
        {
            return;
        }

        TimeSpan brief = scope.Policy.Findings.BriefSpanMax;
        if (last - first <= brief && collector.LongestSilence(first, last) >= brief)
        {
            Add(line, new Reason(
                ReconciliationReasons.BrieflyHeard,
                ("antenna", antenna.Antenna.Number.ToString(CultureInfo.InvariantCulture)),
                ("seconds", (last - first).TotalSeconds.ToString("0.###", CultureInfo.InvariantCulture))));
        }
    }

    private void SearchTags(JudgedLine line)
    {
        ToolReads reads = line.Reads;
        bool anyRead = reads.Best is { LookCount: > 0 };
        if (reads is { Judgement: not null, Neighbour: null } && !anyRead && line.Conclusion.Basis == AccountingBasis.Sighted)
        {
            Add(line, new Reason(ReconciliationReasons.TagToReplace));
        }
        else if (anyRead && reads.SilentTagCount > 0)
        {
            Add(line, new Reason(ReconciliationReasons.SecondTagSilent, ("silent", reads.SilentTagCount.ToString(CultureInfo.InvariantCulture))));
        }
    }

    /// <summary>It explains nothing and settles nothing: the tag is to be qualified again while its tool can still be found.</summary>
    private void SearchFadingTags(JudgedLine line)
    {
        if (scope.Input.History.Count == 0)
        {
            return;
        }

        foreach (TagBinding binding in line.Reads.LiveTags)
        {
            if (scope.Input.History.TryGetValue(binding.Tag, out TagHistory? history) && history.FadingSum >= scope.Policy.Findings.FadingLimit)
            {
                findings.Add(new Finding(
                    FindingLevel.Line,
                    new Reason(
                        RiskReasons.TagFading, ("tag", binding.Tag.ToString()), ("silent", LineConclusion.Text(history.SessionsPresented - history.SessionsRead)),
                        ("presented", LineConclusion.Text(history.SessionsPresented))))
                {
                    LineNumbers = [line.Conclusion.OuterNumber],
                    LineLabels = [line.Conclusion.Label],
                    Tags = [binding.Tag],
                });
            }
        }
    }

    private void SearchProximity(JudgedLine line)
    {
        bool isReadWell = SharedCauseSearch.IsReadWell(line);
        foreach (TagBinding binding in line.Reads.LiveTags)
        {
            foreach (ReadSession session in collector.OthersThatHeard(binding.Tag))
            {
                // Of a tool that was read well here only what came later is news.
                DateTimeOffset at = session.Find(binding.Tag)!.LastSeen!.Value;
                if (!isReadWell || at > line.Reads.LastSeen)
                {
                    AddHint(line, session.Presentation.Station.Id, at);
                }
            }

            foreach (ProximityNote note in isReadWell ? [] : scope.NotesOf(binding.Tag))
            {
                AddHint(line, note.Station, note.LastSeen);
            }
        }
    }

    private void SearchElsewhere(JudgedLine line)
    {
        if (line.Reads.HeardLater is { } heard)
        {
            Add(line, new Reason(ReconciliationReasons.FindingReadLater, [.. heard.Why.Values.Select(static pair => (pair.Key, pair.Value))]));
        }

        if (line.Reads.SeenOutside is { } seen)
        {
            Add(line, new Reason(
                ReconciliationReasons.FindingSeenOutside, ("tool", seen.Tool.Value), ("by", seen.By.Value), ("where", seen.Where.Value), ("at", scope.Time(seen.At))));
        }
    }

    private void AddHint(JudgedLine line, StationId station, DateTimeOffset at)
        => Add(line, new Reason(ReconciliationReasons.Proximity, ("station", station.Value), ("at", scope.Time(at))));

    private void SearchCalibration(JudgedLine line)
    {
        if (line.Conclusion.Calibration is { State: not (CalibrationState.NotRequired or CalibrationState.Current or CalibrationState.DueSoon) } status)
        {
            Add(line, new Reason(ReconciliationReasons.CalibrationNotFit, ("status", status.ToString().TrimEnd('.'))));
        }
    }

    private void SearchOtherManifests(JudgedLine line)
    {
        if (line.Conclusion.Line.Tool is { } tool && scope.Input.Kits.IsOnOther(tool.Id, line.Manifest.Id, scope.AsOf))
        {
            foreach (KitId other in scope.Input.Kits.ManifestsWith(tool.Id, scope.AsOf).Select(static other => other.Id))
            {
                if (other != line.Manifest.Id)
                {
                    Add(line, new Reason(ReconciliationReasons.ToolInTwoKits, ("tool", tool.Id.Value), ("kit", other.Value)));
                }
            }
        }
    }

    private void Add(JudgedLine line, Reason reason)
        => findings.Add(line.FindingOf(FindingLevel.Line, reason));
}
