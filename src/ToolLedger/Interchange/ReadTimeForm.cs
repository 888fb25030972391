namespace ToolLedger.Interchange;

/// <summary>How a file of reads writes an instant.</summary>
public enum ReadTimeForm
{
    /// <summary>RFC 3339: date, time and an offset from UTC, for example 2026-03-01T15:55:01.25Z. Digits behind 100 ns
    /// (seven decimals) are dropped. A time without an offset is refused: it names no instant.</summary>
    Iso8601WithOffset,

    /// <summary>Seconds since 1970-01-01T00:00:00Z, with or without decimals.</summary>
    EpochSeconds,

    /// <summary>Milliseconds since 1970-01-01T00:00:00Z, with or without decimals.</summary>
    EpochMilliseconds,

    /// <summary>Microseconds since 1970-01-01T00:00:00Z, with or without decimals.</summary>
    EpochMicroseconds,

    /// <summary>Date and time as the site's clocks showed them, without an offset, for example 2026-03-01T15:55:01.25; the calendar of the options
    /// (<see cref="ReadFileOptions.Calendar"/>) says which instant that was. A time that the clocks showed twice or never is refused, and so is one with
    /// an offset.</summary>
    Iso8601Local,
}
