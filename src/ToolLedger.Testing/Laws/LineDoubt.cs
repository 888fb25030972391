using System;
using System.Linq;
using ToolLedger.Reconciliation;

namespace ToolLedger.Testing.Laws;

/// <summary>Whether something speaks against who or where a line's tool is, settled or not. Taking such evidence away may well help.</summary>
internal static class LineDoubt
{
    public static bool IsIn(LineConclusion line) => line.State == LineState.Conflict || line.Reasons.Any(static reason =>
        reason.Code.StartsWith("identity.", StringComparison.Ordinal)
        || reason.Kind == ReconciliationReasons.OtherMark
        || reason.Kind == ReconciliationReasons.SightedInOtherKit
        || reason.Kind == ReconciliationReasons.SightedOutside
        || reason.Kind == ReconciliationReasons.ReadLaterElsewhere);
}
