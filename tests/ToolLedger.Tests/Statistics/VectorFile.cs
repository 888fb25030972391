using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text.Json;
using ToolLedger.Tests.Records;
using Xunit;

namespace ToolLedger.Tests.Statistics;

/// <summary>A file of worked examples: each with its source beside it in the file, a value and how close a result has to come.</summary>
internal sealed class VectorFile(params string[] path)
{
    private readonly JsonElement[] vectors = [.. JsonDocument.Parse(RepositoryFiles.Read(path)).RootElement.GetProperty("vectors").EnumerateArray()];

    /// <summary>The vectors of a method; fails if there is none, so that a renamed method is not a test that passes.</summary>
    public IReadOnlyList<JsonElement> Of(string method)
    {
        JsonElement[] found = [.. vectors.Where(vector => vector.GetProperty("method").GetString() == method)];
        Assert.NotEmpty(found);
        return found;
    }

    /// <summary>A number of the inputs, written as a number or as text.</summary>
    public static double Number(JsonElement vector, string name)
    {
        JsonElement value = vector.GetProperty("inputs").GetProperty(name);
        return value.ValueKind == JsonValueKind.String ? double.Parse(value.GetString()!, CultureInfo.InvariantCulture) : value.GetDouble();
    }

    public static string Text(JsonElement vector, string name) => vector.GetProperty("inputs").GetProperty(name).GetString()!;

    /// <summary>Every vector's id and method.</summary>
    public IEnumerable<(string Id, string Method)> All => vectors.Select(static vector => (vector.GetProperty("id").GetString()!, vector.GetProperty("method").GetString()!));

    /// <summary>Whether a result is as close to the expected value as the vector demands.</summary>
    public static void Close(JsonElement vector, double actual, string? part = null) =>
        Close(vector, actual, part is null ? vector.GetProperty("expected") : vector.GetProperty("expected").GetProperty(part), part);

    /// <summary>The same for one of a list of expected values.</summary>
    public static void Close(JsonElement vector, double actual, int index) =>
        Close(vector, actual, vector.GetProperty("expected")[index], index.ToString(CultureInfo.InvariantCulture));

    private static void Close(JsonElement vector, double actual, JsonElement expected, string? part)
    {
        double value = expected.GetDouble();
        JsonElement tolerance = vector.GetProperty("tolerance");
        double allowed = tolerance.TryGetProperty("rel", out JsonElement relative) ? relative.GetDouble() * Math.Abs(value) : tolerance.GetProperty("abs").GetDouble();
        Assert.True(Math.Abs(actual - value) <= allowed, $"{vector.GetProperty("id").GetString()} {part}: {actual:R} instead of {value:R} +- {allowed:R}");
    }
}
