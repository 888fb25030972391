using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Reads;

/// <summary>A station as stored in a presentation.</summary>
internal sealed class StationRecord : JsonRecord
{
    public JsonText Id { get; set; }

    public List<JsonNumber>? Antennas { get; set => field = Note(value); }

    public List<ControlTagRecord>? ControlTags { get; set => field = Note(value); }
}
