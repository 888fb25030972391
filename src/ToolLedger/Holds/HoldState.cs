using System;
using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Holds;

/// <summary>What entries about holds have done so far.</summary>
internal sealed class HoldState
{
    internal Dictionary<EntryId, HeldItem> Holds { get; } = [];

    internal List<HeldItem> InOrder { get; } = [];

    internal Dictionary<EntryId, FoundDeclaration> Finds { get; } = [];

    internal Dictionary<EntryId, FoundWithdrawal> Withdrawals { get; } = [];

    internal List<DropRecord> Drops { get; } = [];

    internal Dictionary<EntryId, HoldEntry> Items { get; } = [];

    internal Dictionary<EntryId, ItemRecovery> Recoveries { get; } = [];

    internal HeldItem? HeldAt(EntryId hold, DateTimeOffset at) => Holds.TryGetValue(hold, out HeldItem? item) && item.IsHeldAt(at) ? item : null;

    internal bool IsRecoveredAt(EntryId item, DateTimeOffset at) => Recoveries.TryGetValue(item, out ItemRecovery? recovery) && recovery.At <= at;
}
