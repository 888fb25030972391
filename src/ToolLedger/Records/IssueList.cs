using System.Collections.Generic;
using System.Globalization;

namespace ToolLedger.Records;

/// <summary>Collects issues up to a stated number, so that a hostile record cannot fill the memory with them.</summary>
internal static class IssueList
{
    internal const int MaxCount = 10_000;

    /// <summary>Adds an issue; past the limit one last issue says that there are more.</summary>
    internal static void Report(this List<RecordIssue> issues, string place, Reason reason, int? lineNumber = null)
    {
        if (issues.Count < MaxCount)
        {
            issues.Add(new RecordIssue(place, reason, lineNumber));
        }
        else if (issues.Count == MaxCount)
        {
            issues.Add(new RecordIssue("$", new Reason(RecordRules.MoreIssues, ("limit", MaxCount.ToString(CultureInfo.InvariantCulture)))));
        }
    }
}
