using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Tools;

/// <summary>What a register of tag bindings refuses (common practice: a tag is on one tool at a time, and its history is kept).</summary>
public static class TagRules
{
    /// <summary>A tag is live on two tools at one instant.</summary>
    public static ReasonKind LiveOnTwoTools { get; } = new("tag.live-on-two-tools", "The tag {tag} is bound to {tool} and to {otherTool} at {time}.");

    /// <summary>A tag is bound to the same tool twice at one instant, so that its history contradicts itself.</summary>
    public static ReasonKind DuplicateBinding { get; } = new("tag.duplicate-binding", "The tag {tag} is bound to {tool} twice at {time}.");

    /// <summary>A binding ends before or when it starts.</summary>
    public static ReasonKind EndsBeforeItStarts { get; } = new("tag.ends-before-it-starts", "The binding ends at {until}, not after its start at {from}.");

    /// <summary>A binding without an effective time.</summary>
    public static ReasonKind NoEffectiveTime { get; } = new("tag.no-effective-time", "The binding does not say from when it is in force.");

    /// <summary>Every kind of this room.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } = [LiveOnTwoTools, DuplicateBinding, EndsBeforeItStarts, NoEffectiveTime];
}
