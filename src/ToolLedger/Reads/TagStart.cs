using System.Runtime.InteropServices;

namespace ToolLedger.Reads;

/// <summary>What is kept of every tag and hardly ever touched: with its <see cref="TagEntry"/>, its place in the table and its first look no more than 64 bytes.</summary>
[StructLayout(LayoutKind.Sequential, Pack = 4)]
internal struct TagStart
{
    private const long NoInstant = long.MaxValue;

    /// <summary>The earliest instant of a look, in ticks after the origin of the store.</summary>
    internal long First;

    /// <summary>The number of what few tags have, or -1.</summary>
    internal int Rest;

    /// <summary>Of a tag of which nothing is known yet.</summary>
    internal static TagStart None => new() { First = NoInstant, Rest = -1 };

    /// <summary>Whether there was a look.</summary>
    internal readonly bool IsSeen => First != NoInstant;

    internal void Include(long at)
    {
        if (at < First)
        {
            First = at;
        }
    }
}
