using System;
using System.Linq;
using ToolLedger.Reconciliation;

namespace ToolLedger.Testing.Laws;

/// <summary>Whether something speaks against who or where a line's tool is, settled or not. Taking such evidence away may well help.</summary>
internal static class LineDoubt
{
    /// <summary>Of a sub-kit also whether it does so of a line inside.</summary>
    public static bool IsIn(LineConclusion line) => IsInItself(line) || line.Inner.Any(IsIn);

    private static bool IsInItself(LineConclusion line) => line.State == LineState.Conflict || line.Reasons.Any(static reason =>
        reason.Code.StartsWith("identity.", StringComparison.Ordinal)
        || reason.Kind == ReconciliationReasons.OtherMark
        || reason.Kind == ReconciliationReasons.SightedInOtherKit
        || reason.Kind == ReconciliationReasons.SightedOutside
        || reason.Kind == ReconciliationReasons.ReadLaterElsewhere);
}
