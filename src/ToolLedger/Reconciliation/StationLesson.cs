using System.Collections.Generic;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>What results say of the tags of one session of a kit: that they were there, or were not, by the word of people.</summary>
internal sealed class StationLesson(ReadSession session, KitId kit)
{
    public ReadSession Session { get; } = session;

    public KitId Kit { get; } = kit;

    public bool IsAbnormal { get; set; }

    /// <summary>True where only the silence of tags makes the session abnormal.</summary>
    public bool IsSilent { get; set; }

    /// <summary>True once a result tells of every tagged line by the word of people.</summary>
    public bool IsConfirmed { get; private set; }

    /// <summary>Whether each tag was there, and its mounting class, in order of the tags.</summary>
    public SortedDictionary<TagId, (bool IsThere, string? Mounting)> Tags { get; } = [];

    public HashSet<TagId> Doubtful { get; } = [];

    /// <summary>Adds the words of one result; two that differ are no truth.</summary>
    public void Confirm(IEnumerable<(TagId Tag, bool IsThere, string? Mounting)> told)
    {
        IsConfirmed = true;
        foreach ((TagId tag, bool isThere, string? mounting) in told)
        {
            IsAbnormal |= Tags.TryGetValue(tag, out (bool IsThere, string? Mounting) so) && so != (isThere, mounting);
            Tags[tag] = (isThere, mounting);
        }
    }
}
