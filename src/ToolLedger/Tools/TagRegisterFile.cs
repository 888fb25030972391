using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Tools;

/// <summary>A register as stored: {"schema", "bindings", "quarantines"?}.</summary>
internal sealed class TagRegisterFile : JsonRecordFile
{
    public List<TagBindingRecord?>? Bindings { get; set => field = Note(value); }

    public List<BindingQuarantineRecord?>? Quarantines { get; set => field = Note(value); }
}
