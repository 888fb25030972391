using System.Runtime.InteropServices;

namespace ToolLedger.Reads;

/// <summary>What only some reports have: a last instant that is not the first one, and a count.</summary>
/// <param name="LastTicks">The last instant.</param>
/// <param name="Count">The count, or 0.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct ReportTail(long LastTicks, int Count)
{
    /// <summary>A hash of both, to be added to that of the report they belong to.</summary>
    internal ulong Hash => ((ulong)LastTicks + ((ulong)(uint)Count << 44)) * 0x9E3779B97F4A7C15UL;
}
