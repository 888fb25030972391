namespace ToolLedger.Interchange;

/// <summary>What a column of a master inventory list holds.</summary>
internal enum MasterListColumn : byte
{
    Line,
    Kind,
    Location,
    Tool,
    Description,
    Mark,
    Pieces,
    NeedsCalibration,
    ToolClass,
    SegregationClass,
    Quantity,
    Unit,
    Contents,
    Total,
    SubKit,
    SubKitRevision,
}
