namespace ToolLedger.Interchange;

/// <summary>What a column of a file of reads holds.</summary>
internal enum ReadColumn : byte
{
    Ignored,
    Tag,
    FirstSeen,
    Antenna,
    LastSeen,
    Rssi,
    Count,
    Tid,
    ReportId,
}
