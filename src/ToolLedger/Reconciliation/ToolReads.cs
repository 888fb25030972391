using System;
using System.Collections.Generic;
using ToolLedger.Presence;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>All that the sessions of a kit say about one tool.</summary>
internal sealed class ToolReads
{
    public List<TagBinding> LiveTags { get; } = [];

    public List<IdentityDoubt> Doubts { get; } = [];

    public int SilentTagCount { get; set; }

    public PresenceEvidence? Best { get; set; }

    public PresenceJudgement? Judgement { get; set; }

    public DateTimeOffset? LastSeen { get; set; }

    public Reason? ReadsWithheld { get; set; }
}
