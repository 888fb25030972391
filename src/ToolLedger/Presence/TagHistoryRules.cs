using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Presence;

/// <summary>What a register of tag histories refuses, apart from what any record refuses.</summary>
public static class TagHistoryRules
{
    /// <summary>A tag with two histories.</summary>
    public static ReasonKind TagTwice { get; } = new("tag-history.tag-twice", "The tag {tag} has two histories.");

    /// <summary>A part that is larger than the whole it belongs to.</summary>
    public static ReasonKind PartOverWhole { get; } = new("tag-history.part-over-whole", "{part} is {count}, more than {whole} ({limit}).");

    /// <summary>A sum of strengths that so many strengths cannot have.</summary>
    public static ReasonKind ImpossibleSum { get; } = new("tag-history.impossible-sum", "{count} {count:strength|strengths} cannot have the sum {sum} in hundredths of dBm.");

    /// <summary>Every kind of tag histories.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } = [TagTwice, PartOverWhole, ImpossibleSum];
}
