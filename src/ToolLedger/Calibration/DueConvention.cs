namespace ToolLedger.Calibration;

/// <summary>How a due date is read. Sites differ, so the convention is configuration and every output names it.</summary>
public enum DueConvention
{
    /// <summary>The tool may be used through the end of the printed day, by the site's calendar. A label that gives only a month is not guessed at: the status is unknown.</summary>
    DayIncluded,

    /// <summary>The tool may be used through the last day of the month that holds the due date.</summary>
    MonthEnd,
}
