using ToolLedger.Records;

namespace ToolLedger.Reads;

/// <summary>A loss as stored in a presentation.</summary>
internal sealed class LossRecord : JsonRecord
{
    public JsonText Kind { get; set; }

    public JsonText At { get; set; }

    public JsonNumber Antenna { get; set; }
}
