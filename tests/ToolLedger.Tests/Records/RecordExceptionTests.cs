using System;
using System.Linq;
using ToolLedger.Records;
using Xunit;

namespace ToolLedger.Tests.Records;

public sealed class RecordExceptionTests
{
    [Fact]
    public void The_message_lists_the_first_20_issues_and_says_how_many_more()
    {
        RecordIssue[] issues = [.. Enumerable.Range(1, 23).Select(i => new RecordIssue($"$.lines[{i}]", new Reason(RecordRules.TextEmpty), i))];
        var exception = new RecordException(issues);
        Assert.Equal(issues, exception.Issues);
        Assert.StartsWith("The record was refused: 23 issues.\n$.lines[1]: The text is empty. (record.text-empty)\n", exception.Message, StringComparison.Ordinal);
        Assert.EndsWith("$.lines[20]: The text is empty. (record.text-empty)\n... and 3 more", exception.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_issue_never_shows_a_raw_control_character_of_its_place() =>
        Assert.Equal("$.a\\u{001B}b: The text is empty. (record.text-empty)", new RecordIssue("$.a\u001bb", new Reason(RecordRules.TextEmpty)).ToString());

    [Fact]
    public void Issues_are_equal_by_place_reason_and_line()
    {
        var issue = new RecordIssue("$", new Reason(RecordRules.Empty), 3);
        Assert.Equal(issue, new RecordIssue("$", new Reason(RecordRules.Empty), 3));
        Assert.NotEqual(issue, new RecordIssue("$", new Reason(RecordRules.Empty)));
        Assert.NotEqual(issue, new RecordIssue("$.a", new Reason(RecordRules.Empty), 3));
    }
}
