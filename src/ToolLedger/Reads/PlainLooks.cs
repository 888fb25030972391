using System.Runtime.InteropServices;

namespace ToolLedger.Reads;

/// <summary>What a session says of a tag in plain figures, for those who need no more and want no object for it.</summary>
[StructLayout(LayoutKind.Auto)]
internal struct PlainLooks
{
    /// <summary>Whether a read of it was taken as evidence.</summary>
    internal bool IsAccepted;

    internal long FirstTicks;
    internal long LastTicks;
    internal int LookCount;

    /// <summary>As <see cref="TagEvidence.AntennaCount"/>.</summary>
    internal int AntennaCount;

    /// <summary>The TIDs read, both empty for none.</summary>
    internal TidPair Tids;
}
