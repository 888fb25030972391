using System.Runtime.InteropServices;

namespace ToolLedger.Reads;

/// <summary>What is kept of one tag in one pass on one antenna: which slots had a read, and the extremes of time.</summary>
[StructLayout(LayoutKind.Auto)]
internal struct CellEntry
{
    internal long FirstTicks;
    internal long LastTicks;
    internal int Next;
    internal int RecentSlot;
    internal int Block;
    internal ushort SlotCount;
    internal ushort Pass;
    internal byte SizeClass;
    internal byte Antenna;
}
