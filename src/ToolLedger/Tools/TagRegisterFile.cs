using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Tools;

/// <summary>A register as stored: {"schema", "bindings"}.</summary>
internal sealed class TagRegisterFile : JsonRecordFile
{
    public List<TagBindingRecord?>? Bindings { get; set => field = Note(value); }
}
