using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Records;

namespace ToolLedger.Tools;

/// <content>Bindings that people doubt.</content>
public sealed partial class TagRegister
{
    /// <summary>Most quarantines of one register, past and standing.</summary>
    public const int MaxQuarantineCount = 200_000;

    /// <summary>Every quarantine, past and standing, ordered by tag and start.</summary>
    public IReadOnlyList<BindingQuarantine> Quarantines { get; }

    /// <summary>The quarantines that concern a binding, ordered by start: those of its tag and tool from its start on, up to the next binding of the
    /// same tag to the same tool.</summary>
    /// <param name="binding">A binding of this register.</param>
    /// <returns>The quarantines, past and standing; none if nobody ever doubted it.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="binding"/> is null.</exception>
    public IReadOnlyList<BindingQuarantine> QuarantinesOf(TagBinding binding)
    {
        ArgumentNullException.ThrowIfNull(binding);
        return _quarantines.Count > 0 && _quarantines.TryGetValue(binding.Tag, out List<BindingQuarantine>? ofTag) ? Among(ofTag, binding) : [];
    }

    private IReadOnlyList<BindingQuarantine> Among(List<BindingQuarantine> ofTag, TagBinding binding)
    {
        DateTimeOffset next = HistoryOf(binding.Tag)
            .Where(other => other.Tool == binding.Tool && other.From > binding.From)
            .Select(static other => other.From)
            .DefaultIfEmpty(DateTimeOffset.MaxValue)
            .Min();
        return [.. ofTag.Where(quarantine => quarantine.Tool == binding.Tool && quarantine.From >= binding.From && quarantine.From < next)];
    }

    /// <summary>Checks quarantines against bindings ordered by tag and start, and orders them.</summary>
    private static BindingQuarantine[]? CheckQuarantines(
        TagBinding[] bindings, List<BindingQuarantine> given, Func<int, int> placeOf, IssueList issues)
    {
        int before = issues.Reported;
        var starts = new Dictionary<(TagId Tag, ToolId Tool), DateTimeOffset>(given.Count == 0 ? 0 : bindings.Length);
        foreach (TagBinding binding in given.Count == 0 ? [] : bindings)
        {
            starts.TryAdd((binding.Tag, binding.Tool), binding.From);
        }

        for (int i = 0; i < given.Count; i++)
        {
            string place = QuarantinePlace(placeOf(i));
            BindingQuarantine quarantine = given[i];
            if (!starts.TryGetValue((quarantine.Tag, quarantine.Tool), out DateTimeOffset start) || start > quarantine.From)
            {
                issues.Report(place, new Reason(TagRules.QuarantineWithoutBinding,
                    ("tag", quarantine.Tag.ToString()), ("tool", quarantine.Tool.Value), ("time", RecordTime.ToText(quarantine.From))));
            }

            if (quarantine.ClearedAt is { } cleared && cleared <= quarantine.From)
            {
                issues.Report(place + ".clearedAt", new Reason(TagRules.ClearedBeforeQuarantine,
                    ("cleared", RecordTime.ToText(cleared)), ("from", RecordTime.ToText(quarantine.From))));
            }

            int told = (quarantine.ClearedAt is null ? 0 : 1) + (quarantine.ClearedBy.IsEmpty ? 0 : 1) + (quarantine.ClearedReason is null ? 0 : 1);
            if (told is not (0 or 3))
            {
                issues.Report(place, new Reason(TagRules.ClearingIncomplete, ("tag", quarantine.Tag.ToString())));
            }
        }

        return issues.Reported > before ? null : [.. given
            .OrderBy(static quarantine => quarantine.Tag)
            .ThenBy(static quarantine => quarantine.From)
            .ThenBy(static quarantine => quarantine.Tool.Value, StringComparer.Ordinal)
            .ThenBy(static quarantine => quarantine.By.Value, StringComparer.Ordinal)
            .ThenBy(static quarantine => quarantine.Reason, StringComparer.Ordinal)
            .ThenBy(static quarantine => quarantine.ClearedAt ?? DateTimeOffset.MaxValue)];
    }

    private static List<BindingQuarantine>? Take(IEnumerable<BindingQuarantine> quarantines, IssueList issues)
    {
        ArgumentNullException.ThrowIfNull(quarantines);
        var given = new List<BindingQuarantine>();
        foreach (BindingQuarantine quarantine in quarantines)
        {
            ArgumentNullException.ThrowIfNull(quarantine, nameof(quarantines));
            if (given.Count == MaxQuarantineCount)
            {
                issues.Report("$.quarantines", new Reason(RecordRules.TooLarge,
                    ("limit", MaxQuarantineCount.ToString("N0", CultureInfo.InvariantCulture)), ("what", "quarantines")));
                return null;
            }

            given.Add(quarantine);
        }

        return given;
    }

    private static Dictionary<TagId, List<BindingQuarantine>> ByTag(BindingQuarantine[] quarantines)
    {
        var byTag = new Dictionary<TagId, List<BindingQuarantine>>();
        foreach (BindingQuarantine quarantine in quarantines)
        {
            if (!byTag.TryGetValue(quarantine.Tag, out List<BindingQuarantine>? list))
            {
                byTag.Add(quarantine.Tag, list = []);
            }

            list.Add(quarantine);
        }

        return byTag;
    }

    private static string QuarantinePlace(int index) => string.Create(CultureInfo.InvariantCulture, $"$.quarantines[{index}]");
}
