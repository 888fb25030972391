using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Presence;

/// <summary>A register of tag histories as stored: {"schema", "asOf", "tags"}.</summary>
internal sealed class TagHistoryFile : JsonRecordFile
{
    public JsonText AsOf { get; set; }

    public List<TagHistoryRecord?>? Tags { get; set => field = Note(value); }
}
