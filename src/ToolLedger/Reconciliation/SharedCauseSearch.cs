using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>Looks for one cause of many open lines, so that it is shown once: the whole bag silent or attenuated, else one place, antenna or tag model.</summary>
internal sealed class SharedCauseSearch
{
    private readonly FindingPolicy policy;
    private readonly KitManifest manifest;
    private readonly List<JudgedLine> tagged;
    private readonly List<Finding> findings = [];

    public SharedCauseSearch(FindingPolicy policy, KitManifest manifest, IReadOnlyList<JudgedLine> lines)
    {
        this.policy = policy;
        this.manifest = manifest;
        tagged = [.. lines.Where(static line => line.Reads.Judgement is not null)];
    }

    /// <summary>True where one cause explains the whole bag, so that nothing finer needs saying of its weak lines.</summary>
    public bool IsWholeBag { get; private set; }

    public static bool IsOpenByReads(JudgedLine line) => line.Conclusion.State is LineState.Weak or LineState.NotRead;

    public static bool IsReadWell(JudgedLine line)
        => line.Conclusion.Basis == AccountingBasis.Read || line.Conclusion.OtherBases.Contains(AccountingBasis.Read);

    public IReadOnlyList<Finding> Search()
    {
        IsWholeBag = IsSilent() || IsAttenuated();
        if (!IsWholeBag && tagged.Count(IsOpenByReads) >= policy.SharedCauseLinesNeeded)
        {
            SearchGroups(
                PlaceOf,
                static location => new Reason(ReconciliationReasons.SharedLocation, ("location", location)));
            SearchAntennas();
            SearchGroups(ModelOf, static model => new Reason(ReconciliationReasons.SharedModel, ("model", model)));
        }

        return findings;
    }

    private bool IsSilent()
    {
        bool silent = tagged.Count > 0 && tagged.All(static line => line.Reads is { Best.LookCount: 0, Neighbour: null });
        if (silent)
        {
            Add(new Reason(ReconciliationReasons.NotPresentedOrShielded, ("kit", manifest.Id.Value)), tagged);
        }

        return silent;
    }

    private bool IsAttenuated()
    {
        List<JudgedLine> open = [.. tagged.Where(IsOpenByReads)];
        if (open.Count < policy.SharedCauseLinesNeeded || open.Count * 2 < tagged.Count)
        {
            return false;
        }

        List<PresenceEvidence> heard = [.. tagged.Select(static line => line.Reads.Best!).Where(static best => best.LookCount > 0)];
        bool attenuated = heard.Count > 0 && heard.All(evidence => evidence is { Strongest: { } strongest, History.StrengthBaseline: { } baseline }
            && baseline.CentiDbm - strongest.CentiDbm >= policy.AttenuationDecibels * 100);
        if (attenuated)
        {
            Add(new Reason(ReconciliationReasons.Attenuated, ("decibels", policy.AttenuationDecibels.ToString(CultureInfo.InvariantCulture))), open);
        }

        return attenuated;
    }

    private void SearchGroups(Func<JudgedLine, string?> keyOf, Func<string, Reason> describe)
    {
        foreach (IGrouping<string, JudgedLine> group in tagged
            .Where(line => keyOf(line) is not null)
            .GroupBy(line => keyOf(line)!, StringComparer.Ordinal)
            .OrderBy(static group => group.Key, StringComparer.Ordinal))
        {
            List<JudgedLine> open = [.. group.Where(IsOpenByReads)];
            if (open.Count >= policy.SharedCauseLinesNeeded && !group.Any(IsReadWell) && open.Count < tagged.Count)
            {
                Add(describe(group.Key), open);
            }
        }
    }

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
            if (antenna.Key.Antenna.IsKnown && antenna.Count() >= policy.SharedCauseLinesNeeded && !someReadWellThere)
            {
                Add(new Reason(ReconciliationReasons.SharedAntenna, ("antenna", antenna.Key.Antenna.Number.ToString(CultureInfo.InvariantCulture))), antenna);
            }
        }
    }

    /// <summary>The model of the line's live tags; null where it is not stated or they differ.</summary>
    private static string? ModelOf(JudgedLine line)
    {
        string? model = line.Reads.LiveTags.Count == 0 ? null : line.Reads.LiveTags[0].TagModel;
        return line.Reads.LiveTags.All(binding => string.Equals(binding.TagModel, model, StringComparison.Ordinal)) ? model : null;
    }

    /// <summary>Two kits may use one name for two places.</summary>
    private static string? PlaceOf(JudgedLine line) => line.Conclusion is { Line.Location: { } location, Within.Count: > 0 } inner
        ? $"{location} of line {string.Join('.', inner.Within.Select(LineConclusion.Text))}"
        : line.Conclusion.Line.Location;

    private void Add(Reason reason, IEnumerable<JudgedLine> concerned)
        => findings.Add(new Finding(FindingLevel.Kit, reason)
        {
            LineNumbers = [.. concerned.Select(static line => line.Conclusion.OuterNumber).Distinct()],
            LineLabels = [.. concerned.Select(static line => line.Conclusion.Label)],
        });
}
