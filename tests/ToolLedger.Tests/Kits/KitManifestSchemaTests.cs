using System;
using System.Text;
using System.Text.Json;
using FsCheck.Xunit;
using Json.Schema;
using ToolLedger.Kits;
using ToolLedger.Testing.Generators;
using ToolLedger.Tests.Records;
using Xunit;

namespace ToolLedger.Tests.Kits;

/// <summary>The published JSON Schema says the same as the library: an independent validator accepts and refuses alike.</summary>
public sealed class KitManifestSchemaTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(RepositoryFiles.ReadText("docs", "schemas", "kit-manifest.schema.json"));
    private static readonly string Good = RepositoryFiles.ReadText("tests", "ToolLedger.Tests", "Kits", "Data", "kit-manifest.json");

    /// <summary>Rules between members, which a schema cannot say; its description names them.</summary>
    public static TheoryData<string, string> BeyondTheSchema { get; } = new()
    {
        { "\"id\": \"T2\"", "\"id\": \"T3\"" },
        { "\"line\": 15", "\"line\": 14" },
        { "\"quantity\": 6", "\"quantity\": 6.0001" },
        { "2026-02-01T06:00:00+01:00", "1970-01-01T00:00:00+01:00" },
    };

    public static TheoryData<string, string> GoodChanges { get; } = new()
    {
        { "\"kit\": \"K1\"", "\"kit\": \"\U0001F527\U0001F527 \u05d0\u6f22\"" },
        { "Nacelle service kit", new string('N', 200) },
        { "\"K1\"", "\"" + new string('\u00e4', 64) + "\"" },
        { "2026-02-01T06:00:00+01:00", "1970-01-01T00:00:00Z" },
        { "2026-02-01T06:00:00+01:00", "2999-12-31T23:59:59.9999999Z" },
        { "\"quantity\": 6", "\"quantity\": 0.001" },
        { "\"quantity\": 6", "\"quantity\": 1e6" },
        { "\"revision\": 3", "\"revision\": 3.0" },
        { "\"pieces\": 3", "\"pieces\": 99" },
        { "\"total\": 10", "\"total\": 999" },
        { "\"needsCalibration\": true", "\"needsCalibration\": false" },
    };

    [Property(Arbitrary = [typeof(AnyManifest)])]
    public bool Every_manifest_the_library_writes_is_valid(KitManifest manifest) => IsValid(Encoding.UTF8.GetString(manifest.ToJson()));

    [Fact]
    public void The_example_is_valid_for_both()
    {
        Assert.True(IsValid(Good));
        Assert.True(KitManifest.TryParse(Encoding.UTF8.GetBytes(Good), out _, out _));
    }

    [Theory]
    [MemberData(nameof(GoodChanges))]
    public void A_good_change_is_accepted_by_both(string from, string to)
    {
        string changed = Change(from, to);
        Assert.True(KitManifest.TryParse(Encoding.UTF8.GetBytes(changed), out _, out var issues), string.Join('\n', issues));
        Assert.True(IsValid(changed));
    }

    [Theory]
    [MemberData(nameof(KitManifestBadInputTests.OneChange), MemberType = typeof(KitManifestBadInputTests))]
    public void A_bad_change_is_refused_by_both_unless_the_rule_is_beyond_a_schema(string why, string from, string to, string expected)
    {
        Assert.NotEmpty(why);
        string changed = Change(from, to);
        bool isBeyond = expected.Contains("duplicate", StringComparison.Ordinal) || expected.Contains("same-tool-twice", StringComparison.Ordinal);
        Assert.False(KitManifest.TryParse(Encoding.UTF8.GetBytes(changed), out _, out _));
        Assert.Equal(isBeyond, IsValid(changed));
    }

    [Theory]
    [MemberData(nameof(BeyondTheSchema))]
    public void What_only_the_library_refuses_is_known(string from, string to)
    {
        Assert.False(KitManifest.TryParse(Encoding.UTF8.GetBytes(Change(from, to)), out _, out _));
        Assert.True(IsValid(Change(from, to)));
    }

    private static string Change(string from, string to)
    {
        int at = Good.IndexOf(from, StringComparison.Ordinal);
        Assert.True(at >= 0);
        return string.Concat(Good.AsSpan(0, at), to, Good.AsSpan(at + from.Length));
    }

    private static bool IsValid(string json)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(json);
            return Schema.Evaluate(document.RootElement, new EvaluationOptions { RequireFormatValidation = true }).IsValid;
        }
        catch (Exception exception) when (exception is JsonException or InvalidOperationException)
        {
            // No JSON at all, or half a surrogate pair: no validator gets to see it.
            return false;
        }
    }
}
