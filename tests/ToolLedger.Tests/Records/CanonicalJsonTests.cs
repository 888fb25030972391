using System;
using System.Globalization;
using System.Linq;
using System.Text;
using System.Text.Json;
using FsCheck.Xunit;
using ToolLedger.Records;
using Xunit;

namespace ToolLedger.Tests.Records;

/// <summary>RFC 8785, held to the published test data and to a second sorter.</summary>
public sealed class CanonicalJsonTests
{
    private static readonly JsonElement Vectors = JsonDocument.Parse(
        RepositoryFiles.Read("tests", "ToolLedger.Tests", "Records", "Data", "jcs-documents.json")).RootElement;

    public static TheoryData<string> PairIds { get; } = [.. Vectors.GetProperty("pairs").EnumerateArray().Select(IdOf)];

    public static TheoryData<string> NegativeIds { get; } = [.. Vectors.GetProperty("negative").EnumerateArray().Select(IdOf)];

    [Property]
    public bool Random_bytes_are_accepted_or_refused_and_never_throw(byte[] bytes) =>
        CanonicalJson.TryCanonicalize(bytes, out byte[]? canonical, out RecordIssue? issue)
            ? canonical is not null && issue is null
            : canonical is null && issue is not null;

    [Property]
    public bool A_finite_double_reads_back_with_the_same_bits_from_its_canonical_form(double value)
    {
        if (!double.IsFinite(value) || value == 0)
        {
            return true;
        }

        string text = Canonical(value.ToString("R", CultureInfo.InvariantCulture));
        return double.Parse(text, CultureInfo.InvariantCulture) == value && string.Equals(Canonical(text), text, StringComparison.Ordinal);
    }

    [Property]
    public bool A_text_reads_back_from_its_canonical_form(string text)
    {
        string clean = (text ?? "").Replace("\ud800", "", StringComparison.Ordinal);
        string canonical = Canonical(JsonSerializer.Serialize(new[] { clean }));
        return string.Equals(FirstOf(canonical), FirstOf(JsonSerializer.Serialize(new[] { clean })), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(PairIds))]
    public void The_canonical_form_of_a_published_or_agreed_pair_is_met_byte_for_byte(string id)
    {
        JsonElement pair = Vectors.GetProperty("pairs").EnumerateArray().Single(p => string.Equals(IdOf(p), id, StringComparison.Ordinal));
        byte[] canonical = CanonicalJson.Canonicalize(Encoding.UTF8.GetBytes(pair.GetProperty("input").GetString()!));
        Assert.Equal(pair.GetProperty("canonical").GetString(), Encoding.UTF8.GetString(canonical));
        Assert.Equal("sha256:" + pair.GetProperty("sha256").GetString(), Digest.Of(canonical).ToString());
        Assert.Equal(canonical, CanonicalJson.Canonicalize(canonical));
    }

    [Theory]
    [MemberData(nameof(NegativeIds))]
    public void What_has_no_canonical_form_is_refused_and_what_loses_precision_is_told(string id)
    {
        JsonElement entry = Vectors.GetProperty("negative").EnumerateArray().Single(p => string.Equals(IdOf(p), id, StringComparison.Ordinal));
        byte[] input = Encoding.UTF8.GetBytes(entry.GetProperty("input").GetString()!);
        bool accepted = CanonicalJson.TryCanonicalize(input, out byte[]? canonical, out RecordIssue? issue);
        if (entry.GetProperty("verdict").ValueEquals("reject"))
        {
            Assert.False(accepted);
            Assert.Equal(issue, Assert.Throws<RecordException>(() => CanonicalJson.Canonicalize(input)).Issues.Single());
        }
        else
        {
            Assert.Equal(entry.GetProperty("canonical").GetString(), Encoding.UTF8.GetString(canonical!));
        }
    }

    [Fact]
    public void The_first_1000_numbers_of_the_published_sequence_are_written_as_ECMAScript_does()
    {
        string[] lines = RepositoryFiles.ReadText("tests", "ToolLedger.Tests", "Records", "Data", "es6-numbers-1000.txt")
            .Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(1000, lines.Length);
        foreach (string line in lines)
        {
            string[] parts = line.Split(',');
            double value = BitConverter.UInt64BitsToDouble(ulong.Parse(parts[0], NumberStyles.HexNumber, CultureInfo.InvariantCulture));
            Assert.Equal(parts[1], Canonical(value.ToString("R", CultureInfo.InvariantCulture)));
        }
    }

    [Theory]
    [InlineData("record.empty", "")]
    [InlineData("record.not-json", "{\"a\":1")]
    [InlineData("record.not-json", "[1 2]")]
    [InlineData("record.not-json", "1 2")]
    [InlineData("record.not-json", "// comment\n1")]
    [InlineData("record.lone-surrogate", "{\"\\udc00\":1}")]
    [InlineData("record.lone-surrogate", "[\"\\ud800\\u0041\"]")]
    [InlineData("record.duplicate-member", "{\"a\":1,\"\\u0061\":2}")]
    [InlineData("record.duplicate-member", "{\"b\":1,\"a\":{\"c\":1,\"b\":2,\"c\":3}}")]
    [InlineData("record.out-of-range", "[-1e999]")]
    public void What_is_no_such_JSON_is_refused_with_its_rule(string rule, string text)
    {
        Assert.False(CanonicalJson.TryCanonicalize(Encoding.UTF8.GetBytes(text), out _, out RecordIssue? issue));
        Assert.Equal(rule, issue!.Rule);
    }

    [Theory]
    [InlineData(64, true)]
    [InlineData(65, false)]
    [InlineData(1000, false)]
    [InlineData(1_000_000, false)]
    public void Nesting_beyond_64_levels_is_refused(int depth, bool accepted)
    {
        string text = new string('[', depth) + new string(']', depth);
        Assert.Equal(accepted, CanonicalJson.TryCanonicalize(Encoding.UTF8.GetBytes(text), out _, out RecordIssue? issue));
        Assert.Equal(accepted ? null : "record.too-deep", issue?.Rule);
    }

    private static string FirstOf(string json) => JsonSerializer.Deserialize<string[]>(json)![0];

    private static string IdOf(JsonElement entry) => entry.GetProperty("id").GetString()!;

    private static string Canonical(string json) => Encoding.UTF8.GetString(CanonicalJson.Canonicalize(Encoding.UTF8.GetBytes(json)));
}
