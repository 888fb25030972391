using ToolLedger.Records;

namespace ToolLedger.Reads;

/// <summary>A control tag as stored in a presentation.</summary>
internal sealed class ControlTagRecord : JsonRecord
{
    public JsonText Tag { get; set; }

    public JsonNumber Antenna { get; set; }
}
