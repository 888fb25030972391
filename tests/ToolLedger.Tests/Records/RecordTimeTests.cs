using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ToolLedger.Records;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Records;

/// <summary>A refused time says whether its form is wrong or a part of it is out of range (RFC 3339 section 5.6).</summary>
public sealed class RecordTimeTests
{
    [Theory]
    [InlineData("2026-02-01T06:00:60Z", "The second of the time")]
    [InlineData("2016-12-31T23:59:60Z", "a leap second is not kept")]
    [InlineData("2026-02-01T06:60:00Z", "The minute of the time")]
    [InlineData("2026-02-01T24:00:00Z", "The hour of the time")]
    [InlineData("2026-02-29T06:00:00Z", "must be 01 to 28")]
    [InlineData("2026-00-01T06:00:00Z", "The month of the time")]
    [InlineData("2026-02-01T06:00:00+99:00", "must be -14:00 to +14:00")]
    [InlineData("2026-02-01T06:00:00+14:01", "must be -14:00 to +14:00")]
    [InlineData("2026-02-01T06:00:00-01:60", "must be -14:00 to +14:00")]
    [InlineData("2026-02-01T06:00:00.12345678Z", "at most 7 decimals")]
    [InlineData("0001-01-01T00:00:00+01:00", "is outside the years 1970 to 2999")]
    [InlineData("9999-12-31T23:59:59-14:00", "is outside the years 1970 to 2999")]
    [InlineData("10000-01-01T00:00:00Z", "is outside the years 1970 to 2999")]
    [InlineData("2026-02-01T06:00:00", "has no offset from UTC")]
    [InlineData("2026-02-01 06:00:00Z", "Not a time of the form")]
    [InlineData("02026-02-01T06:00:00Z", "Not a time of the form")]
    [InlineData("2026-02-01T06:00:00.Z", "Not a time of the form")]
    [InlineData("2026-02-01T06:00:00z", "Not a time of the form")]
    [InlineData("-", "Not a time of the form")]
    [InlineData("", "Not a time of the form")]
    public void The_message_says_what_is_wrong(string time, string said) =>
        Assert.Contains(said, Assert.Single(IssuesOf(time)).ToString(), StringComparison.Ordinal);

    [Theory]
    [InlineData("1970-01-01T00:00:00Z")]
    [InlineData("2999-12-31T23:59:59.9999999Z")]
    [InlineData("2024-02-29T06:00:00+14:00")]
    [InlineData("2026-02-01T06:00:00-14:00")]
    public void The_edges_of_the_range_are_accepted(string time) => Assert.Empty(IssuesOf(time));

    [Property]
    public Property With_any_one_character_changed_a_time_is_accepted_only_if_it_still_is_one() =>
        Prop.ForAll(Gen.Choose(0, 32).ToArbitrary(), Gen.Elements('0', '1', '6', '9', '-', '+', ':', '.', 'T', ' ', '\u0660').ToArbitrary(), (at, other) =>
        {
            const string Good = "2026-02-01T06:00:00.5000000+01:00";
            string changed = Good[..at] + other + Good[(at + 1)..];
            bool isTime = DateTimeOffset.TryParseExact(changed, "yyyy-MM-dd'T'HH:mm:ss.FFFFFFFzzz", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateTimeOffset read);
            return IssuesOf(changed).Count == 0 == (isTime && read.Year is >= 1970 and <= 2999);
        });

    private static IReadOnlyList<RecordIssue> IssuesOf(string time)
    {
        byte[] register = Encoding.UTF8.GetBytes($$"""
            { "schema": "toolledger/tag-register/1", "bindings": [ { "tag": "epc:C00000000000000000000001", "tool": "T1", "from": "{{time}}" } ] }
            """);
        bool accepted = TagRegister.TryParse(register, out _, out IReadOnlyList<RecordIssue> issues);
        Assert.Equal(accepted, issues.Count == 0);
        return [.. issues.Where(issue => issue.Place.EndsWith("from", StringComparison.Ordinal))];
    }
}
