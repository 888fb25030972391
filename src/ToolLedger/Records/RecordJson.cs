using System;
using System.Buffers;
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
        IssueList issues, [NotNullWhen(true)] out T? file)
        where T : JsonRecordFile => TryRead(utf8Json, type, [schema], limits, issues, out file);

    /// <summary>As above, for a kind of which several versions are read; the first one named is the present one.</summary>
    internal static bool TryRead<T>(ReadOnlySpan<byte> utf8Json, JsonTypeInfo<T> type, ReadOnlySpan<string> schemas, in JsonLimits limits,
        IssueList issues, [NotNullWhen(true)] out T? file)
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

        foreach (string former in schemas[1..])
        {
            if (string.Equals(file.Schema.Value, former, StringComparison.Ordinal))
            {
                return true;
            }
        }

        return IsSchema(file.Schema, schemas[0], issues);
    }

    /// <summary>Reads a record as a document for <see cref="JsonFields"/>; kind and version are checked as in <c>TryRead</c>.</summary>
    internal static bool TryReadDocument(ReadOnlySpan<byte> utf8Json, string schema, in JsonLimits limits, IssueList issues,
        [NotNullWhen(true)] out JsonDocument? document)
    {
        document = null;
        if (JsonScan.Check(utf8Json, limits) is { } issue)
        {
            issues.Add(issue);
            return false;
        }

        JsonDocument read;
        try
        {
            var options = new JsonDocumentOptions { AllowDuplicateProperties = false, MaxDepth = CanonicalJson.MaxDepth };
            read = JsonDocument.Parse(JsonScan.WithoutMark(utf8Json).ToArray(), options);
        }
        catch (JsonException exception)
        {
            issues.Add(IssueOf(exception));
            return false;
        }

        JsonElement found = default;
        bool isObject = read.RootElement.ValueKind == JsonValueKind.Object;
        if (!isObject)
        {
            issues.Report("$", new Reason(RecordRules.WrongType, ("expected", "an object"), ("found", RecordReader.NameOf(read.RootElement.ValueKind))));
        }

        bool hasSchema = isObject && read.RootElement.TryGetProperty("schema", out found);
        if (!isObject || !IsSchema(hasSchema ? TextOf(found) : default, schema, issues))
        {
            read.Dispose();
            return false;
        }

        document = read;
        return true;
    }

    /// <summary>Writes a record with a writer of the common layout.</summary>
    internal static byte[] Write(Action<Utf8JsonWriter> write)
    {
        var buffer = new ArrayBufferWriter<byte>(1024);
        using (var writer = new Utf8JsonWriter(buffer, Layout))
        {
            write(writer);
        }

        return Ended(buffer);
    }

    /// <summary>Writes a record: indented by two, lines ended by LF, the last one too.</summary>
    internal static byte[] Write<T>(T file, JsonTypeInfo<T> type)
    {
        var buffer = new ArrayBufferWriter<byte>(1024);
        using (var writer = new Utf8JsonWriter(buffer, Layout))
        {
            JsonSerializer.Serialize(writer, file, type);
        }

        return Ended(buffer);
    }

    /// <summary>Checks kind and version of a record.</summary>
    internal static bool IsSchema(JsonText found, string expected, IssueList issues)
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

    private static byte[] Ended(ArrayBufferWriter<byte> buffer)
    {
        buffer.GetSpan(1)[0] = (byte)'\n';
        buffer.Advance(1);
        return buffer.WrittenSpan.ToArray();
    }

    private static JsonText TextOf(JsonElement element) => element.ValueKind == JsonValueKind.String
        ? new JsonText(element.GetString())
        : new JsonText(null, JsonTokenType.Null);

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
