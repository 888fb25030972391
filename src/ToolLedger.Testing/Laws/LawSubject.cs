using System;
using ToolLedger.Reconciliation;

namespace ToolLedger.Testing.Laws;

/// <summary>What is put to the laws.</summary>
/// <param name="Reconcile">From facts to an answer.</param>
/// <param name="Policy">The policy it works under.</param>
/// <param name="Rule">The rule it is about, or null.</param>
internal sealed record LawSubject(Func<ReconciliationInput, ReconciliationResult> Reconcile, ReconciliationPolicy Policy, IReconciliationRule? Rule);
