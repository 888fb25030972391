using System.Collections;
using System.Collections.Generic;
using System.Globalization;

namespace ToolLedger.Records;

/// <summary>Collects issues up to a stated number, so that a hostile record cannot fill the memory with them, and counts all of them.</summary>
/// <remarks>As a list it has the kept ones; whether something was wrong since is told by <see cref="Reported"/>, which goes on beyond that limit. Not thread-safe.</remarks>
internal sealed class IssueList : IReadOnlyList<RecordIssue>
{
    internal const int MaxCount = 10_000;

    private readonly List<RecordIssue> kept = [];

    /// <summary>How many were reported, those that are not kept among them.</summary>
    internal int Reported { get; private set; }

    int IReadOnlyCollection<RecordIssue>.Count => kept.Count;

    public RecordIssue this[int index] => kept[index];

    public List<RecordIssue>.Enumerator GetEnumerator() => kept.GetEnumerator();

    IEnumerator<RecordIssue> IEnumerable<RecordIssue>.GetEnumerator() => kept.GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => kept.GetEnumerator();

    /// <summary>Adds an issue; past the limit one last issue says that there are more.</summary>
    internal void Report(string place, Reason reason, int? lineNumber = null) => Add(new RecordIssue(place, reason, lineNumber));

    internal void Add(RecordIssue issue)
    {
        Reported++;
        if (kept.Count < MaxCount)
        {
            kept.Add(issue);
        }
        else if (kept.Count == MaxCount)
        {
            kept.Add(new RecordIssue("$", new Reason(RecordRules.MoreIssues, ("limit", MaxCount.ToString(CultureInfo.InvariantCulture)))));
        }
    }

    internal void Clear()
    {
        kept.Clear();
        Reported = 0;
    }
}
