using System.Collections.Generic;
using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Calibration;

/// <summary>A calibration register as stored; the first form has no events.</summary>
internal sealed class CalibrationRegisterFile : JsonRecordFile
{
    public IReadOnlyList<CalibrationEntry?>? Records { get; set; }

    public IReadOnlyList<JsonElement>? Events { get; set => field = Note(value); }
}
