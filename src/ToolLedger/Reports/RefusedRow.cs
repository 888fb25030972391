using System.Runtime.InteropServices;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>A row of a source that could not be used, and why.</summary>
/// <param name="LineNumber">The line in the source, from 1.</param>
/// <param name="Reason">What is wrong with it.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct RefusedRow(long LineNumber, Reason Reason);
