using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;
using System.Text.Json.Nodes;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tests.Records;
using Xunit;

namespace ToolLedger.Tests.Kits;

/// <summary>What a manifest file may hold by accident or by intent, and the rule that refuses it.</summary>
public sealed class KitManifestBadInputTests
{
    private static readonly string Good = RepositoryFiles.ReadText("tests", "ToolLedger.Tests", "Kits", "Data", "kit-manifest.json");

    /// <summary>Why, what to replace in the good file, by what, and the one issue expected as "place rule line".</summary>
    public static TheoryData<string, string, string, string> OneChange { get; } = new()
    {
        { "other version", "kit-manifest/1", "kit-manifest/2", "$ record.schema-version" },
        { "other kind", "kit-manifest/1", "tag-register/1", "$ record.schema-version" },
        { "no schema", "\"schema\": \"toolledger/kit-manifest/1\",", "", "$ record.missing-member" },
        { "no kit", "\"kit\": \"K1\",", "", "$ record.missing-member" },
        { "kit is a number", "\"kit\": \"K1\"", "\"kit\": 1", "$.kit record.wrong-type" },
        { "kit is null", "\"kit\": \"K1\"", "\"kit\": null", "$.kit record.wrong-type" },
        { "kit is an object", "\"kit\": \"K1\"", "\"kit\": {\"a\": [1]}", "$.kit record.wrong-type" },
        { "unknown member", "\"kit\": \"K1\"", "\"kit\": \"K1\", \"colour\": \"red\"", "$ record.unknown-member" },
        { "same member twice", "\"kit\": \"K1\"", "\"kit\": \"K1\", \"kit\": \"K1\"", "$.kit record.duplicate-member" },
        { "same member twice, escaped", "\"kit\": \"K1\"", "\"kit\": \"K1\", \"\\u006bit\": \"K1\"", "$.kit record.duplicate-member" },
        { "member name in upper case", "\"kit\":", "\"Kit\":", "$ record.unknown-member; $ record.missing-member" },
        { "revision 0", "\"revision\": 3", "\"revision\": 0", "$.revision record.out-of-range" },
        { "revision of halves", "\"revision\": 3", "\"revision\": 3.5", "$.revision record.out-of-range" },
        { "revision as text", "\"revision\": 3", "\"revision\": \"3\"", "$.revision record.wrong-type" },
        { "revision beyond a decimal", "\"revision\": 3", "\"revision\": 1e40", "$.revision record.out-of-range" },
        { "NaN", "\"revision\": 3", "\"revision\": NaN", "line 4, column 15 record.not-json" },
        { "Infinity", "\"quantity\": 6", "\"quantity\": Infinity", "line 179, column 19 record.not-json" },
        { "not signed", "\"signedBy\": {", "\"signedBy\": null, \"x\": {", "$ record.unknown-member; $.signedBy manifest.not-signed" },
        { "signed by nobody", "\"person\": \"p-custodian\",", "", "$.signedBy record.missing-member" },
        { "time without offset", "2026-02-01T06:00:00+01:00", "2026-02-01T06:00:00", "$.effectiveFrom record.time-without-offset" },
        { "year 10000", "2026-02-01T06:00:00+01:00", "10000-02-01T06:00:00Z", "$.effectiveFrom record.time-out-of-range" },
        { "year 3000", "2026-02-01T06:00:00+01:00", "3000-01-01T00:00:00Z", "$.effectiveFrom record.time-out-of-range" },
        { "year 1969", "2026-02-01T06:00:00+01:00", "1969-12-31T23:59:59Z", "$.effectiveFrom record.time-out-of-range" },
        { "31 February", "2026-02-01T06:00:00+01:00", "2026-02-31T06:00:00Z", "$.effectiveFrom record.time-part-out-of-range" },
        { "hour 24", "2026-02-01T06:00:00+01:00", "2026-02-01T24:00:00Z", "$.effectiveFrom record.time-part-out-of-range" },
        { "second 60", "2026-02-01T06:00:00+01:00", "2026-02-01T06:00:60Z", "$.effectiveFrom record.time-part-out-of-range" },
        { "8 decimals", "2026-02-01T06:00:00+01:00", "2026-02-01T06:00:00.12345678Z", "$.effectiveFrom record.time-part-out-of-range" },
        { "point without decimals", "2026-02-01T06:00:00+01:00", "2026-02-01T06:00:00.Z", "$.effectiveFrom record.bad-time" },
        { "offset without colon", "2026-02-01T06:00:00+01:00", "2026-02-01T06:00:00+0100", "$.effectiveFrom record.time-without-offset" },
        { "offset of 15 hours", "2026-02-01T06:00:00+01:00", "2026-02-01T06:00:00+15:00", "$.effectiveFrom record.time-part-out-of-range" },
        { "space for T", "2026-02-01T06:00:00+01:00", "2026-02-01 06:00:00+01:00", "$.effectiveFrom record.bad-time" },
        { "Arabic digits", "2026-02-01T06:00:00+01:00", "\u0662026-02-01T06:00:00+01:00", "$.effectiveFrom record.bad-time" },
        { "time as a number", "\"2026-02-01T06:00:00+01:00\"", "1769925600", "$.effectiveFrom record.wrong-type" },
        { "no effective time", "\"effectiveFrom\": \"2026-02-01T06:00:00+01:00\",", "", "$ manifest.no-effective-time" },
        { "control character in a name", "Nacelle service kit", "Nacelle \\u001b[2Jkit", "$.title record.text-not-printable" },
        { "bidirectional override in a name", "Nacelle service kit", "Nacelle \u202ekit", "$.title record.text-not-printable" },
        { "half a surrogate pair", "Nacelle service kit", "Nacelle \\ud800", "line 5, column 12 record.lone-surrogate" },
        { "lines are an object", "\"lines\": [", "\"lines\": {}, \"x\": [", "$.lines record.wrong-type" },
        { "no piece count", "\"pieces\": 3", "\"pieces\": 0", "$.lines[9].tool.pieces manifest.no-piece-count 10" },
        { "pieces not stated", "\"pieces\": 3", "\"needsCalibration\": false", "$.lines[9].tool.pieces manifest.no-piece-count 10" },
        { "null piece count", "\"pieces\": 3", "\"pieces\": null", "$.lines[9].tool.pieces manifest.no-piece-count 10" },
        { "100 pieces", "\"pieces\": 3", "\"pieces\": 100", "$.lines[9].tool.pieces record.out-of-range 10" },
        { "set of one", "\"total\": 10", "\"total\": 1", "$.lines[12].total manifest.set-total 13" },
        { "set without total", ",\n      \"total\": 10", "", "$.lines[12].total manifest.set-total 13" },
        { "no quantity", "\"quantity\": 6,", "", "$.lines[14].quantity manifest.line-without-quantity 15" },
        { "quantity 0", "\"quantity\": 6", "\"quantity\": 0", "$.lines[14].quantity manifest.line-without-quantity 15" },
        { "quantity below 0", "\"quantity\": 6", "\"quantity\": -6", "$.lines[14].quantity record.out-of-range 15" },
        { "quantity as text", "\"quantity\": 6", "\"quantity\": \"6\"", "$.lines[14].quantity record.wrong-type 15" },
        { "no unit", "\"quantity\": 6,\n      \"unit\": \"each\"", "\"quantity\": 6", "$.lines[14].unit manifest.line-without-unit 15" },
        { "kind of another version", "\"kind\": \"consumable\"", "\"kind\": \"kit\"", "$.lines[13].kind manifest.unknown-kind 14" },
        { "no kind", "\"kind\": \"consumable\",", "", "$.lines[13] record.missing-member 14" },
        { "members of another kind", "\"total\": 10", "\"total\": 10, \"unit\": \"each\"", "$.lines[12] record.unknown-member 13" },
        { "no line number", "\"line\": 15,", "", "$.lines[14] manifest.no-line-number" },
        { "line number 0", "\"line\": 15", "\"line\": 0", "$.lines[14].line record.out-of-range" },
        { "line number of another line", "\"line\": 15", "\"line\": 14", "$.lines[14].line manifest.duplicate-line-number 14" },
        { "tool of another line", "\"id\": \"T2\"", "\"id\": \"T3\"", "$.lines[2] manifest.same-tool-twice 3" },
        { "tool without id", "\"id\": \"T2\",", "", "$.lines[1].tool record.missing-member 2" },
        { "null for external ids", "\"externalIds\": [", "\"externalIds\": null, \"x\": [", "$.lines[3].tool record.wrong-type 4; $.lines[3].tool record.unknown-member 4" },
        { "flag as text", "\"needsCalibration\": true", "\"needsCalibration\": \"yes\"", "$.lines[3].tool.needsCalibration record.wrong-type 4" },
        { "comment", "\"kit\"", "/* */ \"kit\"", "line 3, column 3 record.not-json" },
        { "trailing comma", "\"unit\": \"each\"", "\"unit\": \"each\",", "line 181, column 5 record.not-json" },
    };

    [Theory]
    [MemberData(nameof(OneChange))]
    public void One_change_of_a_good_file_is_refused_with_place_rule_and_line(string why, string from, string to, string expected)
    {
        int at = Good.IndexOf(from, StringComparison.Ordinal);
        Assert.True(at >= 0, why);
        string changed = string.Concat(Good.AsSpan(0, at), to, Good.AsSpan(at + from.Length));
        Assert.Equal(expected, Issues(Encoding.UTF8.GetBytes(changed)));
    }

    [Theory]
    [InlineData("nothing", "", "$ record.empty")]
    [InlineData("white space", " \n", "line 2, column 1 record.not-json")]
    [InlineData("null", "null", "$ record.wrong-type")]
    [InlineData("a list", "[]", "$ record.wrong-type")]
    [InlineData("text", "\"kit\"", "$ record.wrong-type")]
    [InlineData("an empty object", "{}", "$ record.missing-member")]
    [InlineData("two values", "{} {}", "line 1, column 4 record.not-json")]
    public void What_is_no_manifest_at_all_is_refused(string why, string text, string expected)
    {
        Assert.NotEmpty(why);
        Assert.Equal(expected, Issues(Encoding.UTF8.GetBytes(text)));
    }

    [Fact]
    public void Every_issue_of_a_bad_file_is_told_at_once()
    {
        JsonObject file = JsonNode.Parse(Good)!.AsObject();
        file.Remove("title");
        file["revision"] = 0;
        file["lines"]![0]!["tool"]!["description"] = "";
        file["lines"]![1]!.AsObject().Remove("tool");
        file["lines"]![2] = null;
        file["lines"]![13]!.AsObject().Remove("unit");
        file["lines"]![14]!["line"] = 14;
        file["lines"]![14]!["quantity"] = 0.0005;
        Assert.Equal(
            "$.revision record.out-of-range; $ record.missing-member; $.lines[0].tool.description record.text-empty 1; "
            + "$.lines[1] record.missing-member 2; $.lines[2] record.wrong-type; $.lines[13].unit manifest.line-without-unit 14; "
            + "$.lines[14].line manifest.duplicate-line-number 14; $.lines[14].quantity record.out-of-range 14",
            Issues(Encoding.UTF8.GetBytes(file.ToJsonString())));
    }

    [Fact]
    public void UTF_16_and_Latin_1_are_refused_with_the_byte_where_UTF_8_ends()
    {
        Assert.Equal("line 1, column 1 record.not-utf8", Issues([.. Encoding.Unicode.GetPreamble(), .. Encoding.Unicode.GetBytes(Good)]));
        Assert.Equal("line 1, column 2 record.not-json", Issues(Encoding.Unicode.GetBytes("{}")));
        Assert.Equal("line 52, column 50 record.not-utf8", Issues(Encoding.Latin1.GetBytes(Good)));
    }

    [Fact]
    public void A_byte_order_mark_in_front_of_UTF_8_changes_nothing() =>
        Assert.Equal(KitManifest.Parse(Encoding.UTF8.GetBytes(Good)).Digest, KitManifest.Parse([.. Encoding.UTF8.GetPreamble(), .. Encoding.UTF8.GetBytes(Good)]).Digest);

    [Fact]
    public void JSON_of_1000_levels_is_refused()
    {
        Assert.Equal("line 1, column 65 record.too-deep", Issues(Encoding.UTF8.GetBytes(new string('[', 1_000) + new string(']', 1_000))));
        string deepMember = Good.Replace("\"kit\"", "\"x\": " + new string('[', 1_000) + new string(']', 1_000) + ", \"kit\"", StringComparison.Ordinal);
        Assert.EndsWith("record.too-deep", Issues(Encoding.UTF8.GetBytes(deepMember)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_of_10_MB_is_refused_without_a_copy_of_it()
    {
        byte[] json = Encoding.UTF8.GetBytes(Good.Replace("Nacelle", new string('N', 10_000_000), StringComparison.Ordinal));
        long before = GC.GetAllocatedBytesForCurrentThread();
        Assert.Equal("line 5, column 12 record.too-large", Issues(json));
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 100_000);
    }

    [Fact]
    public void A_manifest_of_a_million_lines_is_refused_by_the_stated_limit_before_anything_is_built()
    {
        var json = new StringBuilder(Good.Length + 16_000_000).Append(Good.AsSpan(0, Good.IndexOf('[', StringComparison.Ordinal) + 1));
        for (int i = 0; i < 1_000_000; i++)
        {
            json.Append("{\"line\":1},\n");
        }

        byte[] bytes = Encoding.UTF8.GetBytes(json.Append("{}]}").ToString());
        long before = GC.GetAllocatedBytesForCurrentThread();
        Assert.False(KitManifest.TryParse(bytes, out _, out IReadOnlyList<RecordIssue> issues));
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 100_000);
        Assert.Equal("line 10012, column 1: More than 10,000 entries of one list. (record.too-large)", Assert.Single(issues).ToString());
    }

    [Fact]
    public void More_than_64_MiB_are_refused_by_their_number()
    {
        byte[] bytes = new byte[KitManifest.MaxByteCount + 1];
        bytes.AsSpan().Fill((byte)' ');
        Assert.Equal("$ record.too-large", Issues(bytes));
    }

    [Fact]
    public void More_than_10000_issues_end_in_one_that_says_so()
    {
        string lines = string.Concat(Enumerable.Repeat("{},", 9_999)) + "{}";
        string json = "{\"schema\":\"toolledger/kit-manifest/1\",\"lines\":[" + lines + "]}";
        Assert.False(KitManifest.TryParse(Encoding.UTF8.GetBytes(json), out _, out IReadOnlyList<RecordIssue> issues));
        Assert.Equal(10_001, issues.Count);
        Assert.Equal("record.more-issues", issues[^1].Rule);
    }

    private static string Issues(byte[] json)
    {
        Assert.False(KitManifest.TryParse(json, out KitManifest? manifest, out IReadOnlyList<RecordIssue> issues));
        Assert.Null(manifest);
        Assert.Equal(issues, Assert.Throws<RecordException>(() => KitManifest.Parse(json)).Issues);
        Assert.All(issues, issue => Assert.DoesNotContain(issue.ToString(), c => char.IsControl(c) || c == '\u202e'));
        return string.Join("; ", issues.Select(issue => $"{issue.Place} {issue.Rule} {issue.LineNumber}".TrimEnd()));
    }
}
