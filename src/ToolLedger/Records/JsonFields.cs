using System;
using System.Collections.Generic;
using System.Globalization;
using System.Text.Json;

namespace ToolLedger.Records;

/// <summary>The members of one JSON object, read by name with defaults; whatever is wrong becomes an issue with its place.</summary>
/// <remarks>
/// For objects whose members are all optional, such as policies. Read every known member, then call <see cref="End"/>,
/// which refuses the others. After an issue the fallback is returned, so that reading goes on.
/// </remarks>
internal sealed class JsonFields
{
    private readonly JsonElement _element;
    private readonly string _place;
    private readonly IssueList _issues;
    private readonly HashSet<string> _known = new(StringComparer.Ordinal);

    internal JsonFields(JsonElement element, string place, IssueList issues)
    {
        _element = element;
        _place = place;
        _issues = issues;
        IsObject = element.ValueKind == JsonValueKind.Object;
        if (!IsObject)
        {
            _issues.Report(place, WrongType("an object", element));
        }
    }

    /// <summary>False if the element is no object; then every member reads as absent.</summary>
    internal bool IsObject { get; }

    /// <summary>The place of a member, such as <c>$.sessions.slotLengthSeconds</c>.</summary>
    internal string PlaceOf(string name) => $"{_place}.{name}";

    /// <summary>Reports something about a member.</summary>
    internal void Report(string name, Reason reason) => _issues.Report(PlaceOf(name), reason);

    /// <summary>True if the member is there, whatever it holds; marks it as known.</summary>
    internal bool TryGet(string name, out JsonElement value)
    {
        _known.Add(name);
        value = default;
        return IsObject && _element.TryGetProperty(name, out value);
    }

    internal bool Flag(string name, bool fallback)
    {
        if (!TryGet(name, out JsonElement value))
        {
            return fallback;
        }

        if (value.ValueKind is JsonValueKind.True or JsonValueKind.False)
        {
            return value.GetBoolean();
        }

        Report(name, WrongType("true or false", value));
        return fallback;
    }

    internal int Int32(string name, int fallback, int min, int max) =>
        (int)Number(name, fallback, min, max, decimals: 0);

    internal long Int64(string name, long fallback, long min, long max) =>
        (long)Number(name, fallback, min, max, decimals: 0);

    internal decimal Decimal(string name, decimal fallback, decimal min, decimal max, int decimals = 9) =>
        Number(name, fallback, min, max, decimals);

    /// <summary>A length of time given as a number of seconds, at most 7 decimals (a tick is 100 ns).</summary>
    internal TimeSpan Seconds(string name, TimeSpan fallback, TimeSpan min, TimeSpan max) =>
        FromSeconds(Number(name, ToSeconds(fallback), ToSeconds(min), ToSeconds(max), decimals: 7));

    /// <summary>As <see cref="Seconds"/>, but null when the member is absent.</summary>
    internal TimeSpan? OptionalSeconds(string name, TimeSpan min, TimeSpan max) =>
        IsThere(name) ? Seconds(name, min, min, max) : null;

    /// <summary>Printable text; the fallback if absent.</summary>
    internal string? Text(string name, string? fallback, int maxLength)
    {
        if (!TryGet(name, out JsonElement value))
        {
            return fallback;
        }

        if (value.ValueKind != JsonValueKind.String)
        {
            Report(name, WrongType("text", value));
            return fallback;
        }

        string text = value.GetString()!;
        if (RecordText.Check(text, maxLength) is { } fault)
        {
            Report(name, fault);
            return fallback;
        }

        return text;
    }

    /// <summary>Printable text that must be there; null after an issue.</summary>
    internal string? RequiredText(string name, int maxLength) => Require(name) ? Text(name, null, maxLength) : null;

    /// <summary>A time with offset; null if absent or wrong.</summary>
    internal DateTimeOffset? Time(string name)
    {
        if (!TryGet(name, out JsonElement value))
        {
            return null;
        }

        if (value.ValueKind != JsonValueKind.String)
        {
            Report(name, WrongType("text", value));
            return null;
        }

        if (RecordTime.Check(value.GetString(), out DateTimeOffset time) is { } fault)
        {
            Report(name, fault);
            return null;
        }

        return time;
    }

    /// <summary>A time with offset that must be there; null after an issue.</summary>
    internal DateTimeOffset? RequiredTime(string name) => Require(name) ? Time(name) : null;

    /// <summary>One of some words.</summary>
    internal T Word<T>(string name, T fallback, params ReadOnlySpan<(string Word, T Value)> words)
    {
        if (!TryGet(name, out JsonElement value))
        {
            return fallback;
        }

        var allowed = new List<string>(words.Length);
        foreach ((string word, T meaning) in words)
        {
            if (value.ValueKind == JsonValueKind.String && value.ValueEquals(word))
            {
                return meaning;
            }

            allowed.Add(word);
        }

        Report(name, value.ValueKind != JsonValueKind.String
            ? WrongType("text", value)
            : new Reason(RecordRules.UnknownWord, ("allowed", string.Join(", ", allowed)), ("found", SafeText.Excerpt(value.GetString()))));
        return fallback;
    }

    /// <summary>The members of an object inside; null if absent or no object.</summary>
    internal JsonFields? Child(string name)
    {
        if (!TryGet(name, out JsonElement value))
        {
            return null;
        }

        var child = new JsonFields(value, PlaceOf(name), _issues);
        return child.IsObject ? child : null;
    }

    /// <summary>The entries of a list with their places; none if absent, no list, or longer than the limit.</summary>
    internal IReadOnlyList<(JsonElement Value, string Place)> Items(string name, int maxCount)
    {
        if (!TryGet(name, out JsonElement value))
        {
            return [];
        }

        if (value.ValueKind != JsonValueKind.Array || value.GetArrayLength() > maxCount)
        {
            Report(name, value.ValueKind != JsonValueKind.Array
                ? WrongType("a list", value)
                : new Reason(RecordRules.TooLarge, ("limit", maxCount.ToString("N0", CultureInfo.InvariantCulture)), ("what", "entries")));
            return [];
        }

        var items = new List<(JsonElement, string)>(value.GetArrayLength());
        foreach (JsonElement item in value.EnumerateArray())
        {
            items.Add((item, string.Create(CultureInfo.InvariantCulture, $"{PlaceOf(name)}[{items.Count}]")));
        }

        return items;
    }

    /// <summary>The objects of a list; none if absent, no list, or longer than the limit. The caller ends each.</summary>
    internal IEnumerable<JsonFields> Objects(string name, int maxCount)
    {
        foreach ((JsonElement item, string place) in Items(name, maxCount))
        {
            var child = new JsonFields(item, place, _issues);
            if (child.IsObject)
            {
                yield return child;
            }
        }
    }

    /// <summary>A list of printable texts; none if absent or wrong.</summary>
    internal List<string> Texts(string name, int maxCount, int maxLength)
    {
        var texts = new List<string>();
        foreach ((JsonElement item, string place) in Items(name, maxCount))
        {
            if (item.ValueKind != JsonValueKind.String)
            {
                _issues.Report(place, WrongType("text", item));
            }
            else if (RecordText.Check(item.GetString(), maxLength) is { } fault)
            {
                _issues.Report(place, fault);
            }
            else
            {
                texts.Add(item.GetString()!);
            }
        }

        return texts;
    }

    /// <summary>True if the member is there; otherwise it is an issue.</summary>
    internal bool Require(string name)
    {
        bool isThere = IsThere(name);
        if (!isThere && IsObject)
        {
            _issues.Report(_place, new Reason(RecordRules.MissingMember, ("member", name)));
        }

        return isThere;
    }

    /// <summary>True if the member is there, whatever it holds.</summary>
    internal bool IsThere(string name) => TryGet(name, out _);

    /// <summary>Refuses every member that nobody asked for.</summary>
    internal void End()
    {
        if (!IsObject)
        {
            return;
        }

        foreach (JsonProperty property in _element.EnumerateObject())
        {
            if (!_known.Contains(property.Name))
            {
                _issues.Report(_place, new Reason(RecordRules.UnknownMember, ("member", SafeText.Excerpt(property.Name))));
            }
        }
    }

    /// <summary>Seconds as a number that a JSON file shows without rounding.</summary>
    internal static decimal ToSeconds(TimeSpan span) => (decimal)span.Ticks / TimeSpan.TicksPerSecond;

    private static TimeSpan FromSeconds(decimal seconds) => new((long)(seconds * TimeSpan.TicksPerSecond));

    private static Reason WrongType(string expected, JsonElement found) =>
        new(RecordRules.WrongType, ("expected", expected), ("found", RecordReader.NameOf(found.ValueKind)));

    private decimal Number(string name, decimal fallback, decimal min, decimal max, int decimals)
    {
        if (!TryGet(name, out JsonElement value))
        {
            return fallback;
        }

        if (value.ValueKind != JsonValueKind.Number)
        {
            Report(name, WrongType("a number", value));
            return fallback;
        }

        if (!ExactDecimal.TryRead(value, out decimal number) || number < min || number > max || decimal.Round(number, decimals) != number)
        {
            string form = decimals == 0 ? "a whole number" : string.Create(CultureInfo.InvariantCulture, $"a number of at most {decimals} decimals");
            Report(name, new Reason(RecordRules.OutOfRange,
                ("range", string.Create(CultureInfo.InvariantCulture, $"{form} from {min:0.#########} to {max:0.#########}")),
                ("found", SafeText.Excerpt(value.GetRawText()))));
            return fallback;
        }

        return number;
    }
}
