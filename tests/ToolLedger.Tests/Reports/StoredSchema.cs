using System;
using System.Collections.Concurrent;
using System.IO;
using System.Linq;
using System.Text.Json;
using Json.Schema;
using ToolLedger.Tests.Architecture;
using Xunit;

namespace ToolLedger.Tests.Reports;

/// <summary>The published schemas, judged by a validator that shares no code with the library.</summary>
internal static class StoredSchema
{
    // Lazy, because a schema may be registered once only, and two tests may ask for it at the same time.
    private static readonly ConcurrentDictionary<string, Lazy<JsonSchema>> Schemas = new(StringComparer.Ordinal);

    public static bool Accepts(string name, byte[] utf8Json) => Evaluate(name, utf8Json).IsValid;

    public static void AssertAccepts(string name, byte[] utf8Json)
    {
        EvaluationResults results = Evaluate(name, utf8Json);
        Assert.True(results.IsValid, string.Join('\n', (results.Details ?? [])
            .Where(detail => detail.Errors is not null)
            .SelectMany(detail => detail.Errors!.Select(error => $"{detail.InstanceLocation}: {error.Value}"))));
    }

    private static EvaluationResults Evaluate(string name, byte[] utf8Json)
    {
        using JsonDocument document = JsonDocument.Parse(utf8Json);
        JsonSchema schema = Schemas.GetOrAdd(name, static file => new Lazy<JsonSchema>(() => JsonSchema.FromText(
            File.ReadAllText(Path.Combine(House.RootFolder(), "docs", "schemas", file + ".schema.json"))))).Value;
        return schema.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
    }
}
