using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Reads;

/// <summary>What can be wrong with a site calendar, apart from what can be wrong with any record.</summary>
public static class CalendarRules
{
    /// <summary>Offset changes must ascend in time.</summary>
    public static ReasonKind ChangeOutOfOrder { get; } = new("calendar.change-out-of-order",
        "The offset change from {from} on is not later than the one before it.");

    /// <summary>A local time without offset that the site's clocks showed twice.</summary>
    public static ReasonKind AmbiguousLocalTime { get; } = new("calendar.ambiguous-local-time",
        "The site's clocks showed {local} twice, first at {first} and again at {second}; a time without offset does not say which is meant.");

    /// <summary>A local time that the site's clocks never showed.</summary>
    public static ReasonKind SkippedLocalTime { get; } = new("calendar.skipped-local-time",
        "The site's clocks never showed {local}: they were put forward over it.");

    /// <summary>Every kind of calendars.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } = [ChangeOutOfOrder, AmbiguousLocalTime, SkippedLocalTime];
}
