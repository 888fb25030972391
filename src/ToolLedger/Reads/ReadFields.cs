using System;

namespace ToolLedger.Reads;

/// <summary>Which of the optional members of a read were reported.</summary>
[Flags]
internal enum ReadFields : byte
{
    None = 0,
    Strength = 1,
    Count = 2,
    ReportId = 4,
}
