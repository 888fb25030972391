using System.Runtime.InteropServices;

namespace ToolLedger.Reads;

/// <summary>What a session says of a tag in plain figures, for those who need no more and want no object for it.</summary>
[StructLayout(LayoutKind.Auto)]
internal struct PlainLooks
{
    /// <summary>Whether it was heard inside the presentation.</summary>
    internal bool IsHeard;

    internal long FirstTicks;
    internal long LastTicks;
    internal int LookCount;

    /// <summary>As <see cref="TagEvidence.AntennaCount"/>.</summary>
    internal int AntennaCount;

    /// <summary>The TIDs read, both empty for none.</summary>
    internal TidPair Tids;
}
