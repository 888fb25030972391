using System.Runtime.InteropServices;

namespace ToolLedger.Reads;

/// <summary>The slot in which reads want no care, if each is of one instant and later than every read before it.</summary>
/// <param name="From">The start, in the reader's ticks.</param>
/// <param name="Length">How many ticks it is long; 0 for no such slot.</param>
/// <param name="Heard">The antennas that were heard in it, a bit for each below <see cref="EvidenceStore.PlainAntennas"/>.</param>
/// <param name="Slot">Its number.</param>
/// <param name="Pass">The pass to which all of it belongs.</param>
/// <param name="Correction">Ticks to take from the reader's.</param>
/// <param name="Latest">The latest instant reported before, in the reader's ticks.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct PlainSlot(long From, ulong Length, ulong Heard, int Slot, int Pass, long Correction, long Latest)
{
    /// <summary>Whether a read is plain: later than all before, in the slot, on an antenna heard in it, without a number of its own. Such a read is no repeat and inside the session.</summary>
    /// <param name="read">The read.</param>
    /// <param name="latest">The latest instant before it.</param>
    internal bool IsPlain(in TagRead read, long latest)
    {
        long ticks = read.FirstTicks;
        byte antenna = read.AntennaNumber;
        return ticks > latest && read.LastTicks == ticks && (ulong)(ticks - From) < Length
            && antenna < EvidenceStore.PlainAntennas && ((Heard >> antenna) & 1) != 0 && !read.HasReportId;
    }
}
