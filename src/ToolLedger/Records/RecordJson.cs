using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace ToolLedger.Records;

/// <summary>Stored records from and to bytes: the same limits, strictness and layout for every room.</summary>
/// <remarks>
/// Rooms hand in the type information of their own source-generated context. Such a context declares camel-case names,
/// ignores default values when it writes, and refuses duplicate members; see <c>KitsJson</c>.
/// </remarks>
internal static class RecordJson
{
    private static readonly JsonWriterOptions Layout = new()
    {
        Indented = true,
        IndentSize = 2,
        NewLine = "\n",

        // Names stay readable: the files are not embedded in HTML, and control characters are refused on the way in.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Reads the shape of a record; an unknown kind or version is the only issue then.</summary>
    internal static bool TryRead<T>(ReadOnlySpan<byte> utf8Json, JsonTypeInfo<T> type, string schema, in JsonLimits limits,
        List<RecordIssue> issues, [NotNullWhen(true)] out T? file)
        where T : JsonRecordFile
    {
        file = null;
        if (JsonScan.Check(utf8Json, limits) is { } issue)
        {
            issues.Add(issue);
            return false;
        }

        try
        {
            file = JsonSerializer.Deserialize(JsonScan.WithoutMark(utf8Json), type);
        }
        catch (JsonException exception)
        {
            issues.Add(IssueOf(exception));
            return false;
        }

        if (file is null)
        {
            issues.Report("$", new Reason(RecordRules.WrongType, ("expected", "an object"), ("found", "null")));
            return false;
        }

        return IsSchema(file.Schema, schema, issues);
    }

    /// <summary>Writes a record: indented by two, lines ended by LF, the last one too.</summary>
    internal static byte[] Write<T>(T file, JsonTypeInfo<T> type)
    {
        var buffer = new System.Buffers.ArrayBufferWriter<byte>(1024);
        using (var writer = new Utf8JsonWriter(buffer, Layout))
        {
            JsonSerializer.Serialize(writer, file, type);
        }

        buffer.GetSpan(1)[0] = (byte)'\n';
        buffer.Advance(1);
        return buffer.WrittenSpan.ToArray();
    }

    /// <summary>Checks kind and version of a record.</summary>
    internal static bool IsSchema(JsonText found, string expected, List<RecordIssue> issues)
    {
        if (string.Equals(found.Value, expected, StringComparison.Ordinal))
        {
            return true;
        }

        issues.Report("$", found.IsAbsent
            ? new Reason(RecordRules.MissingMember, ("member", "schema"))
            : new Reason(RecordRules.SchemaVersion, ("expected", expected), ("found", SafeText.Excerpt(found.Value))));
        return false;
    }

    /// <summary>A shape that does not fit, told by the serializer.</summary>
    private static RecordIssue IssueOf(JsonException exception)
    {
        string place = exception.Path is { Length: > 0 } path
            ? SafeText.Excerpt(path)
            : JsonScan.PlaceOf((exception.LineNumber ?? 0) + 1, (exception.BytePositionInLine ?? 0) + 1);
        bool isDuplicate = exception.Message.Contains("uplicate property", StringComparison.Ordinal);
        return new RecordIssue(place, isDuplicate
            ? new Reason(RecordRules.DuplicateMember)
            : new Reason(RecordRules.WrongType, ("expected", "another shape"), ("found", "a value that does not fit it")));
    }
}
