using System;
using System.Globalization;
using System.Text.Json;

namespace ToolLedger.Records;

/// <summary>Turns members of a stored record into values; whatever is missing or wrong becomes an issue with its place.</summary>
/// <remarks>Every method returns null after it reported an issue, so that the caller goes on and finds the next one.</remarks>
internal sealed class RecordReader
{
    internal RecordReader(IssueList issues) => Issues = issues;

    internal IssueList Issues { get; }

    /// <summary>The number of the manifest line or row that issues belong to; null outside of one.</summary>
    internal int? LineNumber { get; set; }

    internal void Report(string place, Reason reason) => Issues.Report(place, reason, LineNumber);

    internal void Missing(string place, string member) =>
        Report(place, new Reason(RecordRules.MissingMember, ("member", member)));

    /// <summary>Members nobody declared, and null where an object or a list belongs.</summary>
    internal void RefuseUnknown(JsonRecord record, string place)
    {
        if (record.HasNull)
        {
            Report(place, new Reason(RecordRules.WrongType, ("expected", "an object or a list"), ("found", "null")));
        }

        if (record.Unknown is { } unknown)
        {
            foreach (string member in unknown.Keys)
            {
                Report(place, new Reason(RecordRules.UnknownMember, ("member", SafeText.Excerpt(member))));
            }
        }
    }

    /// <summary>An entry of a list; null in its place is an issue.</summary>
    internal T? NotNull<T>(T? record, string place)
        where T : JsonRecord
    {
        if (record is null)
        {
            Report(place, new Reason(RecordRules.WrongType, ("expected", "an object"), ("found", "null")));
        }

        return record;
    }

    /// <summary>Text that must be there.</summary>
    internal string? Text(JsonText text, string place, string member, int maxLength)
    {
        if (text.IsAbsent)
        {
            Missing(place, member);
            return null;
        }

        return OptionalText(text, place, member, maxLength);
    }

    /// <summary>Text that may be absent; null stands for absence only in the answer, never in the file.</summary>
    internal string? OptionalText(JsonText text, string place, string member, int maxLength)
    {
        if (!IsString(text, place, member))
        {
            return null;
        }

        if (RecordText.Check(text.Value, maxLength) is { } fault)
        {
            Report($"{place}.{member}", fault);
            return null;
        }

        return text.Value;
    }

    /// <summary>A time that must be there.</summary>
    internal DateTimeOffset? Time(JsonText text, string place, string member)
    {
        if (text.IsAbsent)
        {
            Missing(place, member);
            return null;
        }

        return OptionalTime(text, place, member);
    }

    /// <summary>A time that may be absent.</summary>
    internal DateTimeOffset? OptionalTime(JsonText text, string place, string member)
    {
        if (!IsString(text, place, member))
        {
            return null;
        }

        if (RecordTime.Check(text.Value, out DateTimeOffset time) is { } fault)
        {
            Report($"{place}.{member}", fault);
            return null;
        }

        return time;
    }

    /// <summary>A whole number that must be there.</summary>
    internal int? Int32(JsonNumber number, string place, string member, int min, int max)
    {
        if (number.IsAbsent)
        {
            Missing(place, member);
            return null;
        }

        return OptionalInt32(number, place, member, min, max);
    }

    /// <summary>A whole number that may be absent.</summary>
    internal int? OptionalInt32(JsonNumber number, string place, string member, int min, int max)
    {
        if (!IsNumber(number, place, member))
        {
            return null;
        }

        if (number.Value is not { } value || decimal.Truncate(value) != value || value < min || value > max)
        {
            Report($"{place}.{member}", new Reason(RecordRules.OutOfRange,
                ("range", string.Create(CultureInfo.InvariantCulture, $"a whole number from {min} to {max}")), ("found", TextOf(number))));
            return null;
        }

        return (int)value;
    }

    /// <summary>True or false; the fallback if absent or wrong.</summary>
    internal bool Flag(JsonFlag flag, string place, string member, bool fallback)
    {
        if (flag.IsAbsent)
        {
            return fallback;
        }

        if (flag.Found is not (JsonTokenType.True or JsonTokenType.False))
        {
            WrongType(place, member, "true or false", flag.Found);
        }

        return flag.Value;
    }

    /// <summary>True if a number is there; another type is an issue.</summary>
    internal bool IsNumber(JsonNumber number, string place, string member)
    {
        if (!number.IsAbsent && number.Found != JsonTokenType.Number)
        {
            WrongType(place, member, "a number", number.Found);
        }

        return number.Found == JsonTokenType.Number;
    }

    /// <summary>True if text is there; another type is an issue.</summary>
    internal bool IsString(JsonText text, string place, string member)
    {
        if (!text.IsAbsent && text.Found != JsonTokenType.String)
        {
            WrongType(place, member, "text", text.Found);
        }

        return text.Found == JsonTokenType.String;
    }

    internal static string TextOf(JsonNumber number) => number.Value?.ToString(CultureInfo.InvariantCulture) ?? number.Written ?? "a number out of all ranges";

    private void WrongType(string place, string member, string expected, JsonTokenType found) =>
        Report($"{place}.{member}", new Reason(RecordRules.WrongType, ("expected", expected), ("found", NameOf(found))));

    /// <summary>The word for what stood in the file.</summary>
    internal static string NameOf(JsonValueKind kind) => kind switch
    {
        JsonValueKind.Object => "an object",
        JsonValueKind.Array => "a list",
        JsonValueKind.String => "text",
        JsonValueKind.Number => "a number",
        JsonValueKind.Null => "null",
        JsonValueKind.True or JsonValueKind.False => "true or false",
        _ => "nothing",
    };

    private static string NameOf(JsonTokenType token) => NameOf(token switch
    {
        JsonTokenType.StartObject => JsonValueKind.Object,
        JsonTokenType.StartArray => JsonValueKind.Array,
        JsonTokenType.String => JsonValueKind.String,
        JsonTokenType.Number => JsonValueKind.Number,
        JsonTokenType.Null => JsonValueKind.Null,
        _ => JsonValueKind.True,
    });
}
