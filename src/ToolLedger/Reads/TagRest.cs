using System.Runtime.InteropServices;

namespace ToolLedger.Reads;

/// <summary>What few tags have: TIDs, repeats, reads outside the presentation.</summary>
[StructLayout(LayoutKind.Auto)]
internal struct TagRest
{
    internal TidPair Tids;
    internal long RepeatCount;
    internal long OutsideCount;

    /// <summary>How often the tag's own count of accepted reads went round.</summary>
    internal long AcceptedRounds;
}
