using System.Collections.Generic;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>What the results of one kit say of one of its sessions.</summary>
internal sealed class Lesson(ReadSession session, KitId kit)
{
    public ReadSession Session { get; } = session;

    public KitId Kit { get; } = kit;

    public bool IsAbnormal { get; set; }

    /// <summary>The watch for fading tags: of results under several policies the most wakeful one, so that their order makes no difference.</summary>
    public TagFadingWatch? Watch { get; private set; }

    public Dictionary<TagId, TagObservation> Observations { get; } = [];

    public HashSet<TagId> Doubtful { get; } = [];

    public void Use(TagFadingWatch watch)
        => Watch = Watch is null || watch.Limit < Watch.Limit || (watch.Limit == Watch.Limit && watch.Up > Watch.Up) ? watch : Watch;
}
