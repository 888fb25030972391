using System;
using System.Collections.Generic;
using ToolLedger.Inventory;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>All that the sessions of a kit say about one tool.</summary>
internal sealed class ToolReads
{
    // Most tools have one tag that nobody doubts.
    private List<TagBinding>? liveTags;
    private List<IdentityDoubt>? doubts;
    private List<TagBinding>? suspectTags;

    public IReadOnlyList<TagBinding> LiveTags => liveTags ?? (IReadOnlyList<TagBinding>)[];

    public IReadOnlyList<IdentityDoubt> Doubts => doubts ?? (IReadOnlyList<IdentityDoubt>)[];

    /// <summary>Live tags whose reads since their binding may be those of another tool.</summary>
    public IReadOnlyList<TagBinding> SuspectTags => suspectTags ?? (IReadOnlyList<TagBinding>)[];

    /// <summary>Sightings that read another mark than that of the tool their tag says, and that concern this tool.</summary>
    public IReadOnlyList<MarkMismatch> Mismatches { get; set; } = [];

    public int SilentTagCount { get; set; }

    /// <summary>Tags that could have shown the tool in a session that is weighed: each is a further chance for it to look as if it were there.</summary>
    public int TagCount { get; set; } = 1;

    public PresenceEvidence? Best { get; set; }

    public PresenceJudgement? Judgement { get; set; }

    /// <summary>True where the best tag's reads are withheld because its binding is doubted.</summary>
    public bool IsBestDoubted { get; set; }

    /// <summary>Why a kit nearby explains the reads, or null.</summary>
    public Reason? Neighbour { get; set; }

    /// <summary>The looks that the kit nearby explains.</summary>
    public int LooksNotCounted { get; set; }

    /// <summary>The last of them.</summary>
    public DateTimeOffset? LastHeardNearby { get; set; }

    /// <summary>What people changed around the station between the passes of the best tag, as far as it separates them.</summary>
    public IReadOnlyList<SurroundingsChange> Changes { get; set; } = [];

    public DateTimeOffset? FirstSeen { get; set; }

    public DateTimeOffset? LastSeen { get; set; }

    /// <summary>When any of its tags was last heard in a session of the kit, usable or not: what is said against the tool then is not older.</summary>
    public DateTimeOffset? LastHeard { get; private set; }

    /// <summary>A session of the kit that cannot be used and heard it, or null.</summary>
    public ReadSession? HeardUnusable { get; private set; }

    /// <summary>True where an open doubt leaves it unknown which tool is which.</summary>
    public bool IsIdentityUnknown { get; set; }

    /// <summary>Why another kit's session explains one of the tags better, or null.</summary>
    public Reason? Elsewhere { get; set; }

    public Reason? ReadsWithheld { get; set; }

    /// <summary>The later session of other kits that takes the force from this kit's reads of a tag, or null.</summary>
    public ElsewhereEvidence? HeardLater { get; set; }

    /// <summary>The latest sighting, where it says a place but not that it was in the kit, or null.</summary>
    public Sighting? SeenOutside { get; set; }

    /// <summary>True where reads alone account for the tool.</summary>
    public bool AreEnough => this is { Judgement.State: PresenceState.Accounted, ReadsWithheld: null };

    public void AddLiveTag(TagBinding binding, bool isSuspect)
    {
        (liveTags ??= new List<TagBinding>(1)).Add(binding);
        if (isSuspect)
        {
            (suspectTags ??= []).Add(binding);
        }
    }

    public void AddHeard(ReadSession session, DateTimeOffset at)
    {
        LastHeard = at > LastHeard || LastHeard is null ? at : LastHeard;
        HeardUnusable = session.IsUsable ? HeardUnusable : session;
    }

    public void AddDoubt(in IdentityDoubt doubt) => (doubts ??= []).Add(doubt);

    /// <summary>The same said by several sessions of one kind, usable or not, is one doubt, as late as the last of them.</summary>
    public void AddRetiredRead(TagId tag, in IdentityDoubt doubt)
    {
        bool isUsable = doubt.Unusable is null;
        int known = doubts?.FindIndex(one => one.RetiredTag == tag && one.Unusable is null == isUsable) ?? -1;
        IdentityDoubt told = doubt with { RetiredTag = tag };
        if (known < 0)
        {
            AddDoubt(told);
        }
        else if (doubts![known].At < doubt.At)
        {
            doubts[known] = told;
        }
    }
}
