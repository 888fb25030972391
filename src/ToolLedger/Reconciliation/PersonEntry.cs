using System;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>An entry of an inventory sheet seen only by what it is about; what it is called is asked for when it is used for nothing.</summary>
internal sealed class PersonEntry
{
    public required object Entry { get; init; }

    public required PersonId By { get; init; }

    public required DateTimeOffset At { get; init; }

    /// <summary>The kit of an entry about a kit; the kit in which a tool was seen.</summary>
    public KitId Kit { get; init; }

    /// <summary>The line, or 0.</summary>
    public int LineNumber { get; init; }

    /// <summary>The tool of an entry about a tool; empty otherwise.</summary>
    public ToolId Tool { get; init; }

    /// <summary>What it is, as sentences name it.</summary>
    public override string ToString() => Entry switch
    {
        LineCount count => FormattableString.Invariant($"the count of {count.Quantity} for line {count.LineNumber} of kit {count.Kit}"),
        Annotation annotation => FormattableString.Invariant($"the annotation of line {annotation.LineNumber} of kit {annotation.Kit}"),
        ConsumableUse use => FormattableString.Invariant($"the record of job {use.Job} for line {use.LineNumber} of kit {use.Kit}"),
        JoiningStatement joining => FormattableString.Invariant($"the joining for line {joining.LineNumber} of kit {joining.Kit}"),
        Substitution swap => FormattableString.Invariant($"the substitution by {swap.InPlace} on line {swap.LineNumber} of kit {swap.Kit}"),
        SealRecord seal => $"seal {seal.Number} of kit {seal.Kit}",
        SealCheck check => $"the look at seal {check.NumberRead} of kit {check.Kit}",
        KitOpening opening => $"the opening of kit {opening.Kit}",
        Sighting => $"the sighting of {Tool}",
        PieceCount => $"the piece count of {Tool}",
        Breakage => $"the breakage of {Tool}",
        _ => $"the reconstruction of {Tool}",
    };
}
