using System;
using System.Collections.Generic;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>Whether an inventory satisfies the gate before operation, and why.</summary>
/// <remarks>
/// A record-keeping aid: it does not decide that equipment may be operated. Immutable and thread-safe.
/// </remarks>
public sealed class GateAnswer
{
    internal GateAnswer(KitId kit, DateTimeOffset asOf, DateTimeOffset inventoryAsOf, bool isSatisfied, IReadOnlyList<Reason> reasons, NextStep? next)
    {
        Kit = kit;
        AsOf = asOf;
        InventoryAsOf = inventoryAsOf;
        IsSatisfied = isSatisfied;
        Reasons = reasons;
        Next = next;
    }

    /// <summary>The kit.</summary>
    public KitId Kit { get; }

    /// <summary>The instant asked for.</summary>
    public DateTimeOffset AsOf { get; }

    /// <summary>The instant the inventory is for.</summary>
    public DateTimeOffset InventoryAsOf { get; }

    /// <summary>True where the inventory satisfies the gate.</summary>
    public bool IsSatisfied { get; }

    /// <summary>Why, at least one.</summary>
    public IReadOnlyList<Reason> Reasons { get; }

    /// <summary>What settles it; null exactly when satisfied.</summary>
    public NextStep? Next { get; }

    /// <summary>The answer with its first reason.</summary>
    /// <returns>An English phrase.</returns>
    public override string ToString() => $"kit {Kit.Value}: {(IsSatisfied ? "satisfied" : "not satisfied")}: {Reasons[0]}";
}
