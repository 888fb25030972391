using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text.Json;

namespace ToolLedger.Kits;

/// <summary>Finds the differences between the lines of two revisions: first which lines list the same thing, then member by member of the stored form.</summary>
internal sealed class ManifestComparison
{
    private readonly List<ManifestChange> _changes = [];

    internal static IReadOnlyList<ManifestChange> Compare(KitManifest earlier, KitManifest later)
    {
        var comparison = new ManifestComparison();
        Dictionary<ManifestLine, ManifestLine> afterOf = Pair(earlier, later);
        var paired = new HashSet<ManifestLine>(afterOf.Values, ReferenceEqualityComparer.Instance);
        foreach (ManifestLine before in earlier.Lines)
        {
            if (afterOf.TryGetValue(before, out ManifestLine? after))
            {
                comparison.CompareLines(before, after);
            }
            else
            {
                comparison._changes.Add(new ManifestChange(ManifestChangeKind.Removed, before, null, "", null, null));
            }
        }

        comparison._changes.AddRange(later.Lines
            .Where(line => !paired.Contains(line))
            .Select(static line => new ManifestChange(ManifestChangeKind.Added, null, line, "", null, null)));
        return comparison._changes.AsReadOnly();
    }

    /// <summary>A tool or a sub-kit is the same thing by its id; what has none, by its line number, else by its kind and description.</summary>
    private static Dictionary<ManifestLine, ManifestLine> Pair(KitManifest earlier, KitManifest later)
    {
        var afterOf = new Dictionary<ManifestLine, ManifestLine>(ReferenceEqualityComparer.Instance);
        var left = new HashSet<ManifestLine>(later.Lines, ReferenceEqualityComparer.Instance);
        foreach (Func<ManifestLine, string?> keyOf in (Func<ManifestLine, string?>[])[KeyOf, NumberOf, WordsOf])
        {
            Dictionary<string, Queue<ManifestLine>> byKey = later.Lines
                .Where(left.Contains)
                .Select(line => (Key: keyOf(line), Line: line))
                .Where(static pair => pair.Key is not null)
                .GroupBy(static pair => pair.Key!, StringComparer.Ordinal)
                .ToDictionary(static group => group.Key, static group => new Queue<ManifestLine>(group.Select(static pair => pair.Line)), StringComparer.Ordinal);
            foreach (ManifestLine before in earlier.Lines.Where(line => !afterOf.ContainsKey(line)))
            {
                if (keyOf(before) is { } key && byKey.TryGetValue(key, out Queue<ManifestLine>? same) && same.TryDequeue(out ManifestLine? after))
                {
                    afterOf.Add(before, after);
                    left.Remove(after);
                }
            }
        }

        return afterOf;
    }

    private static string? KeyOf(ManifestLine line) => line switch
    {
        SubKitLine subKit => "kit " + subKit.Kit.Value,
        { Tool: { } tool } => "tool " + tool.Id.Value,
        _ => null,
    };

    private static string? NumberOf(ManifestLine line) => KeyOf(line) is null ? Text(line.Number) : null;

    private static string? WordsOf(ManifestLine line) => KeyOf(line) is null ? $"{line is ConsumableLine} {line.Description}" : null;

    private void CompareLines(ManifestLine before, ManifestLine after)
    {
        SortedDictionary<string, string> old = MembersOf(before);
        SortedDictionary<string, string> current = MembersOf(after);
        if (before.Number != after.Number)
        {
            _changes.Add(new ManifestChange(ManifestChangeKind.Moved, before, after, "line", Text(before.Number), Text(after.Number)));
        }

        foreach (string member in old.Keys.Union(current.Keys, StringComparer.Ordinal).Order(StringComparer.Ordinal))
        {
            string? oldValue = old.GetValueOrDefault(member);
            string? newValue = current.GetValueOrDefault(member);
            if (!string.Equals(oldValue, newValue, StringComparison.Ordinal))
            {
                _changes.Add(new ManifestChange(ManifestChangeKind.Changed, before, after, member, oldValue, newValue));
            }
        }
    }

    /// <summary>Every member of the stored form but the number, so that none can be forgotten here when the form grows.</summary>
    private static SortedDictionary<string, string> MembersOf(ManifestLine line)
    {
        var members = new SortedDictionary<string, string>(StringComparer.Ordinal);
        JsonElement stored = JsonSerializer.SerializeToElement(ManifestLineRecord.Of(line), KitsJson.Default.ManifestLineRecord);
        Collect("", stored, members);
        members.Remove("line");
        return members;
    }

    private static void Collect(string path, JsonElement element, SortedDictionary<string, string> members)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.Object:
                foreach (JsonProperty property in element.EnumerateObject())
                {
                    Collect(path.Length == 0 ? property.Name : $"{path}.{property.Name}", property.Value, members);
                }

                break;
            case JsonValueKind.Array:
                int index = 0;
                foreach (JsonElement item in element.EnumerateArray())
                {
                    Collect(string.Create(CultureInfo.InvariantCulture, $"{path}[{index++}]"), item, members);
                }

                break;
            default:
                members.Add(path, element.ToString());
                break;
        }
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
