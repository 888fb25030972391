namespace ToolLedger.Interchange.Llrp;

/// <summary>Why a read cannot be written as a tag report without changing it.</summary>
public enum LlrpWriteRule
{
    /// <summary>It can be written.</summary>
    None,

    /// <summary>The tag is no EPC.</summary>
    NoEpc,

    /// <summary>A time is not in the years 1970 to 2999, or no whole microsecond.</summary>
    Time,

    /// <summary>The strength is no whole dBm of -128 to 127.</summary>
    Strength,

    /// <summary>The count is over 65,535.</summary>
    Count,

    /// <summary>The TID has a part of a 16-bit word.</summary>
    Tid,

    /// <summary>The read has a report number, which the protocol does not have.</summary>
    ReportId,
}
