using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using System.Text.Json;
using FsCheck.Xunit;
using Json.Schema;
using ToolLedger.Records;
using ToolLedger.Testing.Generators;
using ToolLedger.Tests.Records;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Tools;

public sealed class TagRegisterJsonTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(RepositoryFiles.ReadText("docs", "schemas", "tag-register.schema.json"));
    private static readonly string Good = RepositoryFiles.ReadText("tests", "ToolLedger.Tests", "Tools", "Data", "tag-register.json");

    /// <summary>Why, what to replace, by what, the issue expected, and whether a schema can say so.</summary>
    public static TheoryData<string, string, string, string, bool> OneChange { get; } = new()
    {
        { "other version", "tag-register/1", "tag-register/2", "$ record.schema-version", true },
        { "no bindings", "\"bindings\": [", "\"x\": [", "$ record.unknown-member; $ record.missing-member", true },
        { "bindings are null", "\"bindings\": [", "\"bindings\": null, \"x\": [", "$ record.wrong-type; $ record.unknown-member; $ record.missing-member", true },
        { "binding is null", "\"bindings\": [", "\"bindings\": [null,", "$.bindings[0] record.wrong-type", true },
        { "no tag", "\"tag\": \"epc:3034257BF7194E4000001A81\",", "", "$.bindings[0] record.missing-member", true },
        { "tag without digits", "epc:3034257BF7194E4000001A81", "epc:", "$.bindings[0].tag record.bad-form", true },
        { "tag with a control", "text:RING 0815", "text:RING\\u001b[2J", "$.bindings[14].tag record.bad-form", true },
        { "tag is a number", "\"epc:3034257BF7194E4000001A81\"", "3034", "$.bindings[0].tag record.wrong-type", true },
        { "numbered tag with 15 digits", "E00401000000AB01", "E00401000000AB0", "$.bindings[13].tag record.bad-form", true },
        { "TID that is no hexadecimal text", "\"tid\": \"E280", "\"tid\": \"E28G", "$.bindings[0].tid record.bad-form", true },
        { "empty TID", "\"tid\": \"E28011900000200050000001\"", "\"tid\": \"\"", "$.bindings[0].tid record.bad-form", true },
        { "no tool", "\"tool\": \"T1\",", "", "$.bindings[0] record.missing-member", true },
        { "no start", "\"from\": \"2026-02-01T06:00:00+01:00\",", "", "$.bindings[0] tag.no-effective-time", true },
        { "start without offset", "\"from\": \"2026-02-01T06:00:00+01:00\"", "\"from\": \"2026-02-01T06:00:00\"", "$.bindings[0].from record.time-without-offset", true },
        { "end before the start", "2026-03-01T09:30:00+01:00", "2026-01-01T09:30:00+01:00", "$.bindings[6].until tag.ends-before-it-starts", false },
        { "two live tools", "1A82\"", "1A81\"", "$.bindings[1] tag.live-on-two-tools", false },
        { "bound twice", "epc:3034257BF7194E4000001A8D\",\n      \"tool\": \"T13\"", "epc:3034257BF7194E4000001A8C\",\n      \"tool\": \"T12\"", "$.bindings[12] tag.duplicate-binding", false },
        { "the same tag with and without prefix", "epc:3034257BF7194E4000001A82", "3034257bf7194e4000001a81", "$.bindings[1] tag.live-on-two-tools", false },
        { "person with white space", "\"boundBy\": \"p-custodian\"", "\"boundBy\": \"p-custodian \"", "$.bindings[0].boundBy record.text-white-space", true },
        { "tag model that is empty", "ring tag, glued", "", "$.bindings[14].tagModel record.text-empty", true },
        { "quarantines are null", "\"quarantines\": [", "\"quarantines\": null, \"x\": [", "$ record.wrong-type; $ record.unknown-member", true },
        { "quarantine is null", "\"quarantines\": [", "\"quarantines\": [null,", "$.quarantines[0] record.wrong-type", true },
        { "quarantine without a name", "\"by\": \"p-checker\",", "", "$.quarantines[0] record.missing-member", true },
        { "quarantine without a reason", "\"reason\": \"the tag sits loose\"", "\"reason\": \"\"", "$.quarantines[1].reason record.text-empty", true },
        { "quarantine of another tool", "\"tool\": \"T11\",\n      \"from\": \"2026-02-20", "\"tool\": \"T12\",\n      \"from\": \"2026-02-20", "$.quarantines[0] tag.quarantine-without-binding", false },
        { "quarantine before the binding", "2026-02-20T10:00:00+01:00", "2026-01-20T10:00:00+01:00", "$.quarantines[0] tag.quarantine-without-binding", false },
        { "cleared before it began", "2026-02-20T11:00:00+01:00", "2026-02-20T10:00:00+01:00", "$.quarantines[0].clearedAt tag.cleared-before-quarantine", false },
        { "cleared by nobody", "\"clearedBy\": \"p-custodian\",", "", "$.quarantines[0] tag.clearing-incomplete", true },
        { "cleared without a reason", "\"clearedBy\": \"p-custodian\",\n      \"clearedReason\": \"mark and tag checked together on the bench\"", "\"clearedBy\": \"p-custodian\"", "$.quarantines[0] tag.clearing-incomplete", true },
        { "unknown member", "\"tool\": \"T1\"", "\"tool\": \"T1\", \"note\": \"\"", "$.bindings[0] record.unknown-member", true },
    };

    [Property(Arbitrary = [typeof(AnyTagRegister)])]
    public bool A_register_comes_back_from_its_JSON_with_the_same_bytes_and_digest_and_is_valid(TagRegister register)
    {
        byte[] json = register.ToJson();
        TagRegister back = TagRegister.Parse(json);
        return json.AsSpan().SequenceEqual(back.ToJson()) && back.Digest == register.Digest
            && back.Bindings.Zip(register.Bindings).All(pair => pair.First.Tag == pair.Second.Tag && pair.First.Tid == pair.Second.Tid
                && pair.First.Tool == pair.Second.Tool && pair.First.From.EqualsExact(pair.Second.From)
                && pair.First.Until == pair.Second.Until && pair.First.BoundBy == pair.Second.BoundBy && pair.First.CheckedBy == pair.Second.CheckedBy
                && string.Equals(pair.First.TagModel, pair.Second.TagModel, StringComparison.Ordinal))
            && back.Quarantines.Zip(register.Quarantines).All(pair => pair.First.Tag == pair.Second.Tag && pair.First.Tool == pair.Second.Tool
                && pair.First.From.EqualsExact(pair.Second.From) && pair.First.By == pair.Second.By
                && string.Equals(pair.First.Reason, pair.Second.Reason, StringComparison.Ordinal)
                && pair.First.ClearedAt == pair.Second.ClearedAt && pair.First.ClearedBy == pair.Second.ClearedBy
                && string.Equals(pair.First.ClearedReason, pair.Second.ClearedReason, StringComparison.Ordinal))
            && back.Quarantines.Count == register.Quarantines.Count
            && IsValid(Encoding.UTF8.GetString(json));
    }

    [Property]
    public bool Random_bytes_are_refused_with_an_issue_and_never_throw(byte[] bytes) =>
        !TagRegister.TryParse(bytes, out TagRegister? register, out IReadOnlyList<RecordIssue> issues) && register is null && issues.Count > 0;

    [Fact]
    public void The_example_is_read_and_valid()
    {
        TagRegister register = TagRegister.Parse(Encoding.UTF8.GetBytes(Good));
        Assert.True(IsValid(Good));
        Assert.Equal(15, register.Count);
        Assert.Equal(2, register.Quarantines.Count);
        Assert.Equal("ring tag, glued", register.FindLive(TagId.FromText("RING 0815"), new DateTimeOffset(2026, 3, 1, 8, 30, 0, TimeSpan.Zero))?.TagModel);
        DateTimeOffset then = new(2026, 3, 1, 8, 30, 0, TimeSpan.Zero);
        Assert.Equal("iso15693:E00401000000AB01", Assert.Single(register.LiveTagsOf(new ToolId("T7"), then)).Tag.ToString());
        Assert.Equal(2, register.LiveTagsOf(new ToolId("T5"), then).Count);
    }

    [Theory]
    [MemberData(nameof(OneChange))]
    public void One_change_of_a_good_file_is_refused_by_the_library_and_where_it_can_by_the_schema(string why, string from, string to, string expected, bool inSchema)
    {
        int at = Good.IndexOf(from, StringComparison.Ordinal);
        Assert.True(at >= 0, why);
        string changed = string.Concat(Good.AsSpan(0, at), to, Good.AsSpan(at + from.Length));
        Assert.False(TagRegister.TryParse(Encoding.UTF8.GetBytes(changed), out _, out IReadOnlyList<RecordIssue> issues));
        Assert.Equal(expected, string.Join("; ", issues.Select(issue => $"{issue.Place} {issue.Rule}")));
        Assert.Equal(inSchema, !IsValid(changed));
        Assert.Equal(issues, Assert.Throws<RecordException>(() => TagRegister.Parse(Encoding.UTF8.GetBytes(changed))).Issues);
    }

    [Fact]
    public void Bindings_that_can_be_read_are_checked_beside_the_ones_that_cannot()
    {
        string json = """
            {"schema":"toolledger/tag-register/1","bindings":[
              {"tag":"AAAA","tool":"","from":"2026-01-01T00:00:00Z"},
              {"tag":"BBBB","tool":"T1","from":"2026-01-01T00:00:00Z"},
              {"tag":"BBBB","tool":"T2","from":"2026-01-02T00:00:00Z"}]}
            """;
        Assert.False(TagRegister.TryParse(Encoding.UTF8.GetBytes(json), out _, out IReadOnlyList<RecordIssue> issues));
        Assert.Equal("$.bindings[0].tool record.text-empty; $.bindings[2] tag.live-on-two-tools",
            string.Join("; ", issues.Select(issue => $"{issue.Place} {issue.Rule}")));
    }

    [Fact]
    public void More_than_2_000_000_bindings_are_refused_before_anything_is_built()
    {
        byte[] json = Encoding.UTF8.GetBytes("{\"bindings\":[" + string.Concat(Enumerable.Repeat("0,", TagRegister.MaxBindingCount)) + "0]}");
        long before = GC.GetAllocatedBytesForCurrentThread();
        Assert.False(TagRegister.TryParse(json, out _, out IReadOnlyList<RecordIssue> issues));
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 100_000);
        Assert.Equal("record.too-large", Assert.Single(issues).Rule);
    }

    [Fact]
    public void The_culture_of_the_host_changes_no_byte()
    {
        byte[] expected = TagRegister.Parse(Encoding.UTF8.GetBytes(Good)).ToJson();
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("ar-SA");
            Assert.Equal(expected, TagRegister.Parse(Encoding.UTF8.GetBytes(Good)).ToJson());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static bool IsValid(string json)
    {
        using JsonDocument document = JsonDocument.Parse(json);
        return Schema.Evaluate(document.RootElement, new EvaluationOptions { RequireFormatValidation = true }).IsValid;
    }
}
