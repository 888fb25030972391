using System.Runtime.InteropServices;

namespace ToolLedger.Interchange;

/// <summary>Where a value stands in a line, without its quotation marks.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct QuickJsonValue(ReadColumn Column, bool IsQuoted, int Start, int End);
