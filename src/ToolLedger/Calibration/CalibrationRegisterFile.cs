using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Calibration;

/// <summary>A calibration register as stored.</summary>
internal sealed class CalibrationRegisterFile : JsonRecordFile
{
    public IReadOnlyList<CalibrationEntry?>? Records { get; set; }
}
