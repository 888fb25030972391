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

    /// <summary>The person who bound the tag is named as the one who checked it too.</summary>
    public static ReasonKind CheckedByBinder { get; } = new("tag.checked-by-binder", "Mark and tag must be checked by another person than {person}, who bound the tag.");

    /// <summary>A quarantine of a tag and a tool that were not bound to each other by then.</summary>
    public static ReasonKind QuarantineWithoutBinding { get; } = new("tag.quarantine-without-binding", "No binding of tag {tag} to {tool} began by {time}, so there is none to doubt.");

    /// <summary>A quarantine cleared before or when it began.</summary>
    public static ReasonKind ClearedBeforeQuarantine { get; } = new("tag.cleared-before-quarantine", "The quarantine was cleared at {cleared}, not after its start at {from}.");

    /// <summary>A quarantine cleared without time, name or reason.</summary>
    public static ReasonKind ClearingIncomplete { get; } = new("tag.clearing-incomplete", "A quarantine (tag {tag}) is cleared with a time, a person and a reason, all three.");

    /// <summary>Two live tags of different tools decode to one identity. Found on request; a register with such bindings is accepted.</summary>
    public static ReasonKind SameIdentityOnTwoTools { get; } = new("tag.same-identity-on-two-tools", "The tag {tag} on {tool} and the tag {otherTag} on {otherTool} both decode to {identity}; written anew, one could become the other.");

    /// <summary>Every kind of this room.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } =
    [
        LiveOnTwoTools, DuplicateBinding, EndsBeforeItStarts, NoEffectiveTime, QuarantineWithoutBinding, ClearedBeforeQuarantine, ClearingIncomplete,
        SameIdentityOnTwoTools, CheckedByBinder,
    ];
}
