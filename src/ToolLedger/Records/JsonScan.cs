using System;
using System.Buffers;
using System.Buffers.Text;
using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Unicode;

namespace ToolLedger.Records;

/// <summary>One pass over JSON before anything is built from it: well-formed, UTF-8, within limits, no half characters.</summary>
/// <remarks>Allocates nothing that grows with the text, so a hostile text costs its own length and no more.</remarks>
internal static class JsonScan
{
    private static ReadOnlySpan<byte> Mark => [0xEF, 0xBB, 0xBF];

    /// <summary>The text without the byte order mark that some editors write in front.</summary>
    internal static ReadOnlySpan<byte> WithoutMark(ReadOnlySpan<byte> utf8) => utf8.StartsWith(Mark) ? utf8[Mark.Length..] : utf8;

    /// <summary>Null if the text is acceptable, otherwise the first thing that is wrong with it.</summary>
    internal static RecordIssue? Check(ReadOnlySpan<byte> utf8, in JsonLimits limits)
    {
        if (utf8.Length > limits.ByteCount)
        {
            return new RecordIssue("$", TooLarge(limits.ByteCount, "bytes"));
        }

        utf8 = WithoutMark(utf8);
        if (utf8.IsEmpty)
        {
            return new RecordIssue("$", new Reason(RecordRules.Empty));
        }

        if (!Utf8.IsValid(utf8))
        {
            int offset = ValidLength(utf8);
            return new RecordIssue(PlaceOf(utf8, offset), new Reason(RecordRules.NotUtf8, ("offset", Text(offset))));
        }

        return Walk(utf8, limits);
    }

    /// <summary>"line 3, column 7": both from 1 on, columns in bytes.</summary>
    internal static string PlaceOf(ReadOnlySpan<byte> utf8, int offset)
    {
        ReadOnlySpan<byte> before = utf8[..Math.Min(offset, utf8.Length)];
        int line = 1 + before.Count((byte)'\n');
        int column = before.Length - before.LastIndexOf((byte)'\n');
        return PlaceOf(line, column);
    }

    internal static string PlaceOf(long line, long column) => string.Create(CultureInfo.InvariantCulture, $"line {line}, column {column}");

    private static RecordIssue? Walk(ReadOnlySpan<byte> utf8, in JsonLimits limits)
    {
        // One level more than is allowed, so that this code and not the reader says what is wrong.
        var reader = new Utf8JsonReader(utf8, new JsonReaderOptions { MaxDepth = CanonicalJson.MaxDepth + 1 });
        Span<int> counts = stackalloc int[CanonicalJson.MaxDepth + 2];
        Span<bool> lists = stackalloc bool[CanonicalJson.MaxDepth + 2];
        counts.Clear();
        lists.Clear();
        try
        {
            while (reader.Read())
            {
                if ((CountToken(ref reader, counts, lists, limits) ?? CheckText(ref reader, limits)) is { } reason)
                {
                    return new RecordIssue(PlaceOf(utf8, (int)reader.TokenStartIndex), reason);
                }
            }
        }
        catch (JsonException exception)
        {
            return new RecordIssue(PlaceOf((exception.LineNumber ?? 0) + 1, (exception.BytePositionInLine ?? 0) + 1), NotJson(exception));
        }

        return null;
    }

    /// <summary>The message of the reader without its own count of the place, which starts at 0.</summary>
    internal static Reason NotJson(JsonException exception)
    {
        string message = exception.Message;
        int end = message.IndexOf(". ", StringComparison.Ordinal);
        return new Reason(RecordRules.NotJson, ("fault", SafeText.Excerpt(end < 0 ? message.TrimEnd('.') : message[..end])));
    }

    /// <summary>Counts list entries and members on their level, and the levels.</summary>
    private static Reason? CountToken(ref Utf8JsonReader reader, scoped Span<int> counts, scoped Span<bool> lists, in JsonLimits limits)
    {
        JsonTokenType token = reader.TokenType;
        int depth = reader.CurrentDepth;
        if (token is JsonTokenType.EndObject or JsonTokenType.EndArray)
        {
            return null;
        }

        bool isList = lists[depth];
        if ((isList || token == JsonTokenType.PropertyName) && ++counts[depth] > (isList ? limits.ItemCount : limits.MemberCount))
        {
            return isList ? TooLarge(limits.ItemCount, "entries of one list") : TooLarge(limits.MemberCount, "members of one object");
        }

        if (token is JsonTokenType.StartObject or JsonTokenType.StartArray)
        {
            if (depth == CanonicalJson.MaxDepth)
            {
                return new Reason(RecordRules.TooDeep, ("limit", Text(CanonicalJson.MaxDepth)));
            }

            counts[depth + 1] = 0;
            lists[depth + 1] = token == JsonTokenType.StartArray;
        }

        return null;
    }

    private static Reason? CheckText(ref Utf8JsonReader reader, in JsonLimits limits)
    {
        if (reader.TokenType is not (JsonTokenType.PropertyName or JsonTokenType.String or JsonTokenType.Number))
        {
            return null;
        }

        if (reader.ValueSpan.Length > limits.TextByteCount)
        {
            return TooLarge(limits.TextByteCount, "bytes of one text");
        }

        return reader.ValueIsEscaped && HasLoneSurrogate(reader.ValueSpan) ? new Reason(RecordRules.LoneSurrogate) : null;
    }

    /// <summary>Only escapes can name half a pair: the bytes themselves are valid UTF-8 by now.</summary>
    private static bool HasLoneSurrogate(ReadOnlySpan<byte> text)
    {
        bool high = false;
        for (int i = 0; i < text.Length;)
        {
            bool isEscape = text[i] == (byte)'\\';
            int code = 0;
            bool isCode = isEscape && text[i + 1] == (byte)'u';
            if (isCode && !Utf8Parser.TryParse(text.Slice(i + 2, 4), out code, out _, 'X'))
            {
                return true;
            }

            if (high != char.IsLowSurrogate((char)code))
            {
                return true;
            }

            high = char.IsHighSurrogate((char)code);
            i += isCode ? 6 : isEscape ? 2 : 1;
        }

        return high;
    }

    private static int ValidLength(ReadOnlySpan<byte> utf8)
    {
        int length = 0;
        while (length < utf8.Length && Rune.DecodeFromUtf8(utf8[length..], out _, out int consumed) == OperationStatus.Done)
        {
            length += consumed;
        }

        return length;
    }

    private static Reason TooLarge(int limit, string what) =>
        new(RecordRules.TooLarge, ("limit", limit.ToString("N0", CultureInfo.InvariantCulture)), ("what", what));

    private static string Text(int value) => value.ToString(CultureInfo.InvariantCulture);
}
