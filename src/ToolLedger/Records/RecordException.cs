using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;

namespace ToolLedger.Records;

/// <summary>A record was refused; every issue found is listed.</summary>
public sealed class RecordException : FormatException
{
    private const int IssuesInMessage = 20;

    /// <summary>Makes an exception without issues.</summary>
    public RecordException()
    {
    }

    /// <summary>Makes an exception without issues.</summary>
    /// <param name="message">The message.</param>
    public RecordException(string message)
        : base(message)
    {
    }

    /// <summary>Makes an exception without issues.</summary>
    /// <param name="message">The message.</param>
    /// <param name="innerException">What caused it.</param>
    public RecordException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    /// <summary>Makes an exception from the issues found.</summary>
    /// <param name="issues">The issues; the message lists the first 20 and says how many more there are.</param>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    public RecordException(IEnumerable<RecordIssue> issues)
        : this(Copy(issues))
    {
    }

    private RecordException(RecordIssue[] issues)
        : base(MessageFor(issues)) => Issues = Array.AsReadOnly(issues);

    /// <summary>Every issue, in the order found.</summary>
    public IReadOnlyList<RecordIssue> Issues { get; } = [];

    private static RecordIssue[] Copy(IEnumerable<RecordIssue> issues)
    {
        ArgumentNullException.ThrowIfNull(issues);
        return issues.ToArray();
    }

    private static string MessageFor(RecordIssue[] issues)
    {
        var message = new StringBuilder();
        message.Append(CultureInfo.InvariantCulture, $"The record was refused: {issues.Length} issue{(issues.Length == 1 ? "" : "s")}.");
        foreach (RecordIssue issue in issues.Take(IssuesInMessage))
        {
            message.Append('\n').Append(issue);
        }

        if (issues.Length > IssuesInMessage)
        {
            message.Append(CultureInfo.InvariantCulture, $"\n... and {issues.Length - IssuesInMessage} more");
        }

        return message.ToString();
    }
}
