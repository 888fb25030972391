using System.Runtime.InteropServices;

namespace ToolLedger.Benchmarks.Reads;

/// <summary>What a plain program would keep of a tag.</summary>
[StructLayout(LayoutKind.Auto)]
public struct TagSummary
{
    public int Count;
    public long FirstTicks;
    public long LastTicks;
    public short Strongest;
}
