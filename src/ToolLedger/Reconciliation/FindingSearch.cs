using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Calibration;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>Findings about a kit and its lines: shared causes shown once, tags to look after, hints, calibration. They change no conclusion.</summary>
internal sealed class FindingSearch
{
    private readonly ReconciliationScope scope;
    private readonly KitManifest manifest;
    private readonly ToolReadsCollector collector;
    private readonly IReadOnlyList<JudgedLine> lines;
    private readonly List<JudgedLine> tagged;
    private readonly List<Finding> findings = [];

    public FindingSearch(ReconciliationScope scope, KitManifest manifest, ToolReadsCollector collector, IReadOnlyList<JudgedLine> lines)
    {
        this.scope = scope;
        this.manifest = manifest;
        this.collector = collector;
        this.lines = lines;
        tagged = [.. lines.Where(static line => line.Reads.Judgement is not null)];
    }

    public IReadOnlyList<Finding> Search()
    {
        bool silent = tagged.Count > 0 && tagged.All(static line => line.Reads.Best is { LookCount: 0 });
        if (silent)
        {
            // One kit-level finding instead of one alarm a tool; the finer shared causes would only repeat it.
            findings.Add(About(FindingLevel.Kit, new Reason(ReconciliationReasons.NotPresentedOrShielded, ("kit", manifest.Id.Value)), tagged));
        }
        else
        {
            SearchAttenuation();
            SearchLocations();
            SearchAntennas();
        }

        foreach (JudgedLine line in lines)
        {
            findings.AddRange(line.Findings);
            SearchTags(line);
            SearchProximity(line);
            SearchCalibration(line);
            SearchOtherManifests(line);
        }

        return findings;
    }

    private static bool IsOpenByReads(JudgedLine line) => line.Conclusion.State is LineState.Weak or LineState.NotRead;

    private static bool IsReadWell(JudgedLine line)
        => line.Conclusion.Basis == AccountingBasis.Read || line.Conclusion.OtherBases.Contains(AccountingBasis.Read);

    private static Finding About(FindingLevel level, Reason reason, IEnumerable<JudgedLine> lines)
    {
        JudgedLine[] concerned = [.. lines];
        return new Finding(level, reason)
        {
            LineNumbers = [.. concerned.Select(static line => line.Conclusion.OuterNumber).Distinct()],
            LineLabels = [.. concerned.Select(static line => line.Conclusion.Label)],
        };
    }

    private void SearchAttenuation()
    {
        FindingPolicy policy = scope.Policy.Findings;
        List<JudgedLine> open = [.. tagged.Where(IsOpenByReads)];
        if (open.Count < policy.SharedCauseLinesNeeded || open.Count * 2 < tagged.Count)
        {
            return;
        }

        int compared = 0;
        foreach (PresenceEvidence evidence in tagged.Select(static line => line.Reads.Best!).Where(static best => best.LookCount > 0))
        {
            if (evidence is not { Strongest: { } strongest, History.StrengthBaseline: { } baseline }
                || baseline.CentiDbm - strongest.CentiDbm < policy.AttenuationDecibels * 100)
            {
                return;
            }

            compared++;
        }

        if (compared > 0)
        {
            findings.Add(About(FindingLevel.Kit, new Reason(ReconciliationReasons.Attenuated, ("decibels", policy.AttenuationDecibels.ToString(CultureInfo.InvariantCulture))), open));
        }
    }

    private void SearchLocations()
    {
        foreach (IGrouping<string, JudgedLine> place in tagged
            .Where(static line => line.Conclusion.Line.Location is not null)
            .GroupBy(static line => PlaceOf(line.Conclusion), StringComparer.Ordinal)
            .OrderBy(static group => group.Key, StringComparer.Ordinal))
        {
            List<JudgedLine> open = [.. place.Where(IsOpenByReads)];
            if (open.Count >= scope.Policy.Findings.SharedCauseLinesNeeded && !place.Any(IsReadWell) && open.Count < tagged.Count)
            {
                findings.Add(About(FindingLevel.Kit, new Reason(ReconciliationReasons.SharedLocation, ("location", place.Key)), open));
            }
        }
    }

    /// <summary>Two kits may use one name for two places.</summary>
    private static string PlaceOf(LineConclusion line)
        => line.Within.Count == 0 ? line.Line.Location! : $"{line.Line.Location} of line {string.Join('.', line.Within.Select(LineConclusion.Text))}";

    private void SearchAntennas()
    {
        var onOne = tagged
            .Where(static line => IsOpenByReads(line) && line.Reads.Best!.Antennas.Count == 1)
            .GroupBy(static line => (line.Reads.Best!.Antennas[0].Station, line.Reads.Best!.Antennas[0].Antenna))
            .OrderBy(static group => group.Key.Station.Value, StringComparer.Ordinal)
            .ThenBy(static group => group.Key.Antenna.Number);
        foreach (var antenna in onOne)
        {
            bool someReadWellThere = tagged.Any(line => IsReadWell(line)
                && line.Reads.Best!.Antennas.Any(seen => (seen.Station, seen.Antenna) == antenna.Key));
            if (antenna.Key.Antenna.IsKnown && antenna.Count() >= scope.Policy.Findings.SharedCauseLinesNeeded && !someReadWellThere)
            {
                findings.Add(About(FindingLevel.Kit, new Reason(ReconciliationReasons.SharedAntenna, ("antenna", antenna.Key.Antenna.Number.ToString(CultureInfo.InvariantCulture))), antenna));
            }
        }
    }

    private void SearchTags(JudgedLine line)
    {
        ToolReads reads = line.Reads;
        bool anyRead = reads.Best is { LookCount: > 0 };
        if (reads.Judgement is not null && !anyRead && line.Conclusion.Basis == AccountingBasis.Sighted)
        {
            Add(line, new Reason(ReconciliationReasons.TagToReplace));
        }
        else if (anyRead && reads.SilentTagCount > 0)
        {
            Add(line, new Reason(ReconciliationReasons.SecondTagSilent, ("silent", reads.SilentTagCount.ToString(CultureInfo.InvariantCulture))));
        }
    }

    private void SearchProximity(JudgedLine line)
    {
        if (IsReadWell(line) || line.Reads.LiveTags.Count == 0)
        {
            return;
        }

        foreach (Tools.TagBinding binding in line.Reads.LiveTags)
        {
            foreach (ReadSession session in collector.SessionsOfOtherKits)
            {
                if (session.Find(binding.Tag) is { AcceptedCount: > 0, LastSeen: { } at })
                {
                    AddHint(line, session.Presentation.Station.Id, at);
                }
            }

            foreach (ProximityNote note in scope.Input.ProximityNotes)
            {
                if (note.Tag == binding.Tag && note.LastSeen <= scope.AsOf)
                {
                    AddHint(line, note.Station, note.LastSeen);
                }
            }
        }
    }

    private void AddHint(JudgedLine line, StationId station, DateTimeOffset at)
        => Add(line, new Reason(ReconciliationReasons.Proximity, ("station", station.Value), ("at", scope.Time(at))));

    private void SearchCalibration(JudgedLine line)
    {
        if (line.Conclusion.Calibration is { State: CalibrationState.Overdue or CalibrationState.Unknown } status)
        {
            Add(line, new Reason(ReconciliationReasons.CalibrationNotFit, ("status", status.ToString().TrimEnd('.'))));
        }
    }

    private void SearchOtherManifests(JudgedLine line)
    {
        if (line.Conclusion.Line.Tool is { } tool)
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
        => findings.Add(About(FindingLevel.Line, reason, [line]));
}
