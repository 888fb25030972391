namespace ToolLedger.Calibration;

/// <summary>How a due date is read. Sites differ, so the convention is configuration and every output names it.</summary>
public enum DueConvention
{
    /// <summary>The tool may be used through the end of the printed day, by the site's calendar. A label that gives only a month is not guessed at: the status is unknown.</summary>
    DayIncluded,

    /// <summary>The tool may be used through the last day of the month that holds the due date.</summary>
    MonthEnd,

    /// <summary>Due dates of an interval keep to a fixed anchor: a calibration inside the window around its due date leaves the row of due dates as it is, one outside starts a new row
    /// (the inspection windows of US Army TM 1-1500-328-23, as published). The window is no leave to use a tool past its due date.</summary>
    FixedAnchor,
}
