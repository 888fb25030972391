using System;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Reconciliation;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>The gate asked with nothing but openings, as a host that knows of nothing else.</summary>
internal static class Gate
{
    public static GateAnswer Ask(ReconciliationResult result, DateTimeOffset asOf, params KitOpening[] openings)
        => Ask(result, asOf, new InventoryEntries { Openings = openings });

    public static GateAnswer Ask(ReconciliationResult result, DateTimeOffset asOf, InventoryEntries entries) => OperationGate.Judge(result, new ReconciliationInput
    {
        Kits = new KitRegister([result.Manifest]),
        Subject = result.Manifest.Id,
        Inventory = new InventorySheet(entries),
        AsOf = asOf,
    });
}
