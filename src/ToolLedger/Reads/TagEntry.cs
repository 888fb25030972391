using System.Runtime.InteropServices;
using ToolLedger.Tools;

namespace ToolLedger.Reads;

/// <summary>What is kept of one tag while reads come in. Indexes are -1 for "none".</summary>
[StructLayout(LayoutKind.Auto)]
internal struct TagEntry
{
    internal TagId Tag;
    internal int Hash;
    internal int FirstCell;
    internal int RecentCell;
    internal int Tids;
    internal short Strongest;
    internal short Weakest;
    internal bool HasStrength;
    internal long AcceptedCount;
    internal long RepeatCount;
    internal long OutsideCount;
}
