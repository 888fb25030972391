using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Reads;

/// <summary>A presentation as stored.</summary>
internal sealed class PresentationFile : JsonRecordFile
{
    public JsonText Session { get; set; }

    public StationRecord? Station { get; set; }

    public List<JsonText>? Kits { get; set; }

    public JsonText From { get; set; }

    public JsonText Until { get; set; }

    public List<JsonText>? PassStarts { get; set; }

    public JsonNumber ReaderClockOffsetSeconds { get; set; }

    public JsonNumber ReaderClockOffsetAfterSeconds { get; set; }

    public List<LossRecord>? Losses { get; set; }
}
