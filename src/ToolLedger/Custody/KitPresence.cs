using System;
using ToolLedger.Kits;

namespace ToolLedger.Custody;

/// <summary>Where one kit is. That a kit is present says nothing of its contents: their age is the last content check's.</summary>
/// <param name="Kit">The kit.</param>
/// <param name="State">Where it is.</param>
/// <param name="Holder">Who answers for it.</param>
/// <param name="InventoriedAt">When the tool room was last inventoried; null if never.</param>
public readonly record struct KitPresence(KitId Kit, KitPresenceState State, CustodyHolder Holder, DateTimeOffset? InventoriedAt);
