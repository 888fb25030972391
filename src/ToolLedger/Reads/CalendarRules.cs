using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Reads;

/// <summary>What can be wrong with a site calendar, apart from what can be wrong with any record.</summary>
public static class CalendarRules
{
    /// <summary>Offset changes must ascend in time.</summary>
    public static ReasonKind ChangeOutOfOrder { get; } = new("calendar.change-out-of-order",
        "The offset change from {from} on is not later than the one before it.");

    /// <summary>Every kind of calendars.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } = [ChangeOutOfOrder];
}
