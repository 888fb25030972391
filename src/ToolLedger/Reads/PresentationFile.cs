using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Reads;

/// <summary>A presentation as stored.</summary>
internal sealed class PresentationFile : JsonRecordFile
{
    public JsonText Session { get; set; }

    public StationRecord? Station { get; set => field = Note(value); }

    public List<JsonText>? Kits { get; set => field = Note(value); }

    public JsonText From { get; set; }

    public JsonText Until { get; set; }

    public List<JsonText>? PassStarts { get; set => field = Note(value); }

    public JsonNumber ReaderClockOffsetSeconds { get; set; }

    public JsonNumber ReaderClockOffsetAfterSeconds { get; set; }

    public List<LossRecord>? Losses { get; set => field = Note(value); }

    public List<NearbyKitRecord?>? NearbyKits { get; set => field = Note(value); }

    public List<SurroundingsChangeRecord?>? SurroundingsChanges { get; set => field = Note(value); }

    public JsonText TimeSource { get; set; }
}
