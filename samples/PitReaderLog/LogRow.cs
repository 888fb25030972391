using System;
using System.Runtime.InteropServices;
using ToolLedger.Tools;

namespace PitReaderLog;

/// <summary>One record of the log, as written: nothing is interpreted yet.</summary>
/// <param name="LineNumber">Line of the file, the header being line 1.</param>
/// <param name="Arrival">ARR: date and time without offset.</param>
/// <param name="Duration">DUR: how long the tag stayed.</param>
/// <param name="TimeReference">TRF: G satellite, N network, U clock not referenced.</param>
/// <param name="TagType">TTY: A, R and W are kinds of tags, P is what the reader itself calls a phantom.</param>
/// <param name="Tag">TAG: the number, blanks on the left removed.</param>
/// <param name="DetectionCount">NCD: detections in a row within the record.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct LogRow(
    int LineNumber, DateTime Arrival, TimeSpan Duration, string TimeReference, string TagType, TagId Tag, int DetectionCount);
