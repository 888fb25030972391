using System;

namespace ToolLedger.Reconciliation;

/// <summary>The full answer for a kit whose states are known already, worked out when somebody asks for more than the states.</summary>
internal sealed class CarefulKit
{
    private readonly Lazy<ReconciliationResult> result;

    public CarefulKit(Func<ReconciliationResult> reconcile) => result = new Lazy<ReconciliationResult>(reconcile);

    public ReconciliationResult Result => result.Value;

    public LineConclusion LineAt(int index) => result.Value.Lines[index];
}
