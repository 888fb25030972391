using System;
using System.Collections.Generic;
using System.Globalization;
using ToolLedger.Records;

namespace ToolLedger.Tools;

/// <content>What a register refuses.</content>
public sealed partial class TagRegister
{
    private static TagBinding[]? Check(IEnumerable<TagBinding> bindings, IssueList issues)
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

    /// <summary>Checks bindings and orders them by tag and start; <paramref name="placeOf"/> turns an index in the list into its place in the file.</summary>
    private static TagBinding[]? Check(List<TagBinding> given, Func<int, int> placeOf, IssueList issues)
    {
        int before = issues.Reported;
        for (int i = 0; i < given.Count; i++)
        {
            if (given[i] is { Until: { } until } binding && until <= binding.From)
            {
                issues.Report(PlaceOf(placeOf(i)) + ".until", new Reason(TagRules.EndsBeforeItStarts,
                    ("until", RecordTime.ToText(until)), ("from", RecordTime.ToText(binding.From))));
            }

            if (given[i] is { CheckedBy.IsEmpty: false, BoundBy.IsEmpty: false } check && PersonCount.AreSame(check.CheckedBy, check.BoundBy))
            {
                issues.Report(PlaceOf(placeOf(i)) + ".checkedBy", new Reason(TagRules.CheckedByBinder, ("person", check.BoundBy.Value)));
            }
        }

        int[] order = OrderOf(given);
        for (int start = 0, end; start < order.Length; start = end)
        {
            TagId tag = given[order[start]].Tag;
            for (end = start + 1; end < order.Length && given[order[end]].Tag == tag;)
            {
                end++;
            }

            CheckHistory(given, order.AsSpan(start..end), placeOf, issues);
        }

        return issues.Reported == before ? Array.ConvertAll(order, index => given[index]) : null;
    }

    /// <summary>Indexes of the bindings, ordered by tag and start; equal ones as given.</summary>
    private static int[] OrderOf(List<TagBinding> given)
    {
        int[] order = new int[given.Count];
        for (int i = 0; i < order.Length; i++)
        {
            order[i] = i;
        }

        Array.Sort(order, (left, right) =>
        {
            int difference = given[left].Tag.CompareTo(given[right].Tag);
            difference = difference != 0 ? difference : CompareStarts(given[left], given[right]);
            return difference != 0 ? difference : left.CompareTo(right);
        });
        return order;
    }

    /// <summary>Refuses overlaps in the history of one tag, which is ordered by start.</summary>
    private static void CheckHistory(List<TagBinding> bindings, ReadOnlySpan<int> history, Func<int, int> placeOf, IssueList issues)
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
}
