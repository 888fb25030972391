using System.Runtime.InteropServices;
using ToolLedger.Records;

namespace ToolLedger.Interchange;

/// <summary>What is wrong with a row, before its place in the file is known.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct RowFault(Reason Reason, string? Column);
