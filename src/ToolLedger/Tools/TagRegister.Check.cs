using System;
using System.Collections.Generic;
using System.Globalization;
using ToolLedger.Records;

namespace ToolLedger.Tools;

/// <content>What a register refuses.</content>
public sealed partial class TagRegister
{
    private static Content? Check(IEnumerable<TagBinding> bindings, List<RecordIssue> issues)
    {
        ArgumentNullException.ThrowIfNull(bindings);
        var given = new List<TagBinding>();
        foreach (TagBinding binding in bindings)
        {
            ArgumentNullException.ThrowIfNull(binding, nameof(bindings));
            if (given.Count == MaxBindingCount)
            {
                issues.Report("$.bindings", new Reason(RecordRules.TooLarge,
                    ("limit", MaxBindingCount.ToString("N0", CultureInfo.InvariantCulture)), ("what", "bindings")));
                return null;
            }

            given.Add(binding);
        }

        return Check(given, static index => index, issues);
    }

    /// <summary>Checks bindings; <paramref name="placeOf"/> turns an index in the list into its place in the file.</summary>
    private static Content? Check(List<TagBinding> given, Func<int, int> placeOf, List<RecordIssue> issues)
    {
        int before = issues.Count;
        for (int i = 0; i < given.Count; i++)
        {
            if (given[i] is { Until: { } until } binding && until <= binding.From)
            {
                issues.Report(PlaceOf(placeOf(i)) + ".until", new Reason(TagRules.EndsBeforeItStarts,
                    ("until", RecordTime.ToText(until)), ("from", RecordTime.ToText(binding.From))));
            }
        }

        TagBinding[] bindings = given.ToArray();
        GroupIndex<TagId> byTag = GroupIndex<TagId>.Of(bindings, binding => binding.Tag, CompareStarts);
        for (int group = 0; group < byTag.GroupCount; group++)
        {
            CheckHistory(bindings, byTag.Group(group), placeOf, issues);
        }

        return issues.Count == before ? Content.Order(bindings) : null;
    }

    /// <summary>Refuses overlaps in the history of one tag, which is ordered by start.</summary>
    private static void CheckHistory(TagBinding[] bindings, ReadOnlySpan<int> history, Func<int, int> placeOf, List<RecordIssue> issues)
    {
        TagBinding? last = null;
        foreach (int index in history)
        {
            TagBinding binding = bindings[index];
            if (last is not null && last.IsLiveAt(binding.From))
            {
                Reason reason = last.Tool == binding.Tool
                    ? new Reason(TagRules.DuplicateBinding, ("tag", binding.Tag.ToString()), ("tool", binding.Tool.Value),
                        ("time", RecordTime.ToText(binding.From)))
                    : new Reason(TagRules.LiveOnTwoTools, ("tag", binding.Tag.ToString()), ("tool", last.Tool.Value),
                        ("otherTool", binding.Tool.Value), ("time", RecordTime.ToText(binding.From)));
                issues.Report(PlaceOf(placeOf(index)), reason);
            }

            // The one that reaches furthest may overlap a later one too.
            if (last is null || last.Until is { } lastEnd && (binding.Until is not { } end || end > lastEnd))
            {
                last = binding;
            }
        }
    }

    private static string PlaceOf(int index) => string.Create(CultureInfo.InvariantCulture, $"$.bindings[{index}]");

    /// <summary>Checked bindings, ordered by tag and start.</summary>
    private sealed class Content
    {
        internal required TagBinding[] Bindings { get; init; }

        internal required GroupIndex<TagId> ByTag { get; init; }

        internal static Content Order(TagBinding[] bindings)
        {
            Array.Sort(bindings, static (left, right) =>
            {
                int order = left.Tag.CompareTo(right.Tag);
                return order != 0 ? order : CompareStarts(left, right);
            });
            return new Content { Bindings = bindings, ByTag = GroupIndex<TagId>.Of(bindings, binding => binding.Tag, CompareStarts) };
        }
    }
}
