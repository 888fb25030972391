using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;
using FsCheck.Xunit;
using ToolLedger.Presence;
using ToolLedger.Records;
using ToolLedger.Testing.Generators;
using ToolLedger.Tests.Reports;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Presence;

public sealed class TagHistoryRegisterTests
{
    private const string SchemaName = "tag-history";

    private const string Good = """
        {
          "schema": "toolledger/tag-history/1",
          "asOf": "2026-03-02T18:00:00+01:00",
          "tags": [
            {
              "tag": "epc:3034257BF7194E4000001A81",
              "tool": "T1",
              "presented": 60,
              "read": 18,
              "strengthCount": 18,
              "strengthSumCentiDbm": -117000
            },
            {
              "tag": "text:RING 7",
              "tool": "T2",
              "presented": 400,
              "read": 400
            }
          ]
        }
        """;

    private static readonly TagId Tag = TagId.FromText("RING 7");

    /// <summary>Why, what to replace, by what, the issues expected, and whether a schema can say so.</summary>
    public static TheoryData<string, string, string, string, bool> OneChange { get; } = new()
    {
        { "other version", "tag-history/1", "tag-history/2", "$ record.schema-version", true },
        { "no instant", "\"asOf\": \"2026-03-02T18:00:00+01:00\",", "", "$ record.missing-member", true },
        { "instant without offset", "18:00:00+01:00", "18:00:00", "$.asOf record.time-without-offset", true },
        { "no tags", "\"tags\": [", "\"x\": [", "$ record.unknown-member; $ record.missing-member", true },
        { "entry is null", "\"tags\": [", "\"tags\": [null,", "$.tags[0] record.wrong-type", true },
        { "no tool", "\"tool\": \"T1\",", "", "$.tags[0] record.missing-member", true },
        { "tag that is none", "text:RING 7", "text:", "$.tags[1].tag record.bad-form", true },
        { "tag twice", "text:RING 7", "3034257BF7194E4000001A81", "$.tags[1] tag-history.tag-twice", false },
        { "more read than presented", "\"read\": 18", "\"read\": 61", "$.tags[0].read tag-history.part-over-whole", false },
        { "more strengths than reads", "\"strengthCount\": 18", "\"strengthCount\": 19", "$.tags[0].strengthCount tag-history.part-over-whole", false },
        { "sum of strengths below all", "-117000", "-589825", "$.tags[0].strengthSumCentiDbm tag-history.impossible-sum", false },
        { "sum that is no whole number", "-117000", "-117000.5", "$.tags[0].strengthSumCentiDbm record.out-of-range", true },
        { "too many sessions", "\"presented\": 400", "\"presented\": 65536", "$.tags[1].presented record.out-of-range", true },
        { "negative count", "\"read\": 18", "\"read\": -1", "$.tags[0].read record.out-of-range", true },
        { "unknown member", "\"tool\": \"T1\"", "\"tool\": \"T1\", \"rate\": 0.3", "$.tags[0] record.unknown-member", true },
    };

    [Fact]
    public void The_example_is_read_and_written_byte_for_byte()
    {
        TagHistoryRegister register = TagHistoryRegister.Parse(Encoding.UTF8.GetBytes(Good));

        StoredSchema.AssertAccepts(SchemaName, Encoding.UTF8.GetBytes(Good));
        Assert.Equal(Good.ReplaceLineEndings("\n"), Encoding.UTF8.GetString(register.ToJson()).TrimEnd('\n'));
        TagHistory poor = register.Histories[TagId.Parse("3034257BF7194E4000001A81")];
        Assert.Equal((60, 18, (short?)-6500), (poor.SessionsPresented, poor.SessionsRead, poor.StrengthBaseline?.CentiDbm));
        Assert.Null(register.Histories[Tag].StrengthBaseline);
    }

    [Theory]
    [MemberData(nameof(OneChange))]
    public void One_change_is_refused_by_the_library_and_where_it_can_by_the_schema(string why, string from, string to, string expected, bool inSchema)
    {
        int at = Good.IndexOf(from, StringComparison.Ordinal);
        Assert.True(at >= 0, why);
        byte[] changed = Encoding.UTF8.GetBytes(string.Concat(Good.AsSpan(0, at), to, Good.AsSpan(at + from.Length)));

        Assert.False(TagHistoryRegister.TryParse(changed, out TagHistoryRegister? register, out IReadOnlyList<RecordIssue> issues));
        Assert.Null(register);
        Assert.Equal(expected, string.Join("; ", issues.Select(issue => $"{issue.Place} {issue.Rule}")));
        Assert.Equal(inSchema, !StoredSchema.Accepts(SchemaName, changed));
        Assert.Throws<RecordException>(() => TagHistoryRegister.Parse(changed));
    }

    [Property(Arbitrary = [typeof(AnyTagHistoryRegister)])]
    public void A_register_comes_back_from_its_JSON_with_the_same_bytes_and_is_valid(TagHistoryRegister register)
    {
        byte[] json = register.ToJson();
        TagHistoryRegister back = TagHistoryRegister.Parse(json);

        Assert.Equal(json, back.ToJson());
        Assert.Equal(register.Digest, back.Digest);
        Assert.Equal(register.Entries.Count, back.Histories.Count);
        StoredSchema.AssertAccepts(SchemaName, json);
    }

    [Property(Arbitrary = [typeof(AnyTagHistoryRegister)])]
    public void Damaged_bytes_are_read_or_refused_and_never_throw(TagHistoryRegister register, ushort at, byte value)
    {
        byte[] json = register.ToJson();
        json[at % json.Length] = value;

        bool read = TagHistoryRegister.TryParse(json, out TagHistoryRegister? back, out IReadOnlyList<RecordIssue> issues);
        Assert.Equal(read, back is not null);
        Assert.Equal(read, issues.Count == 0);
    }

    [Property]
    public void The_baseline_lies_between_the_weakest_and_the_strongest_of_at_least_five(short[] strengths)
    {
        short[] counted = [.. strengths.Take(100)];
        TagHistory history = new TagHistoryEntry(Tag, new ToolId("T1"), 100, 100, counted.Length, counted.Sum(strength => strength)).History;

        Assert.Equal(counted.Length >= TagHistoryEntry.BaselineSessionCount, history.StrengthBaseline.HasValue);
        if (history.StrengthBaseline is { } baseline)
        {
            Assert.InRange(baseline.CentiDbm, counted.Min(), counted.Max());
        }
    }

    [Theory]
    [InlineData(-1, 0, 0, 0)]
    [InlineData(65_536, 0, 0, 0)]
    [InlineData(5, 6, 0, 0)]
    [InlineData(5, 5, 6, 0)]
    [InlineData(5, 5, 0, 1)]
    [InlineData(5, 5, 1, 32_768)]
    public void A_history_that_cannot_be_is_refused(int presented, int read, int strengths, int sum) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new TagHistoryEntry(Tag, new ToolId("T1"), presented, read, strengths, sum));

    [Fact]
    public void A_tag_has_one_history()
    {
        var entry = new TagHistoryEntry(Tag, new ToolId("T1"), 1, 1, 0, 0);
        Assert.Equal("tag-history.tag-twice", Assert.Single(Assert.Throws<RecordException>(() => new TagHistoryRegister(DateTimeOffset.UnixEpoch, [entry, entry])).Issues).Rule);
    }
}
