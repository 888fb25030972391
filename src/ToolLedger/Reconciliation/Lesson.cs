using System.Collections.Generic;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>What the results of one kit say of one of its sessions.</summary>
internal sealed class Lesson(ReadSession session, KitId kit)
{
    public ReadSession Session { get; } = session;

    public KitId Kit { get; } = kit;

    public bool IsAbnormal { get; set; }

    public Dictionary<TagId, TagObservation> Observations { get; } = [];

    public HashSet<TagId> Doubtful { get; } = [];
}
