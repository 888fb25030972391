using System;
using ToolLedger.Reads;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>That a tool was somewhere else, and when it was last known to be there.</summary>
internal sealed record ElsewhereEvidence(Reason Why, DateTimeOffset At)
{
    /// <summary>True where a session of another kit said so, whose last look can be compared with a last look; what a person saw voids every session that had begun.</summary>
    public bool IsHeard { get; init; }

    /// <summary>Whether what a session of the kit read of the tool was before it.</summary>
    public bool IsAfter(ReadSession session, TagEvidence evidence) => (IsHeard ? evidence.LastSeen : session.From) < At;
}
