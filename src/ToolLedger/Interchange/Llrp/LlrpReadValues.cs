using System.Runtime.InteropServices;

namespace ToolLedger.Interchange.Llrp;

/// <summary>The values of a tag report that its read depends on, after what is carried over was filled in.</summary>
[StructLayout(LayoutKind.Auto)]
internal struct LlrpReadValues
{
    internal int? AntennaId;
    internal int? PeakRssi;
    internal int? Count;
    internal ulong? FirstUtc;
    internal ulong? LastUtc;
    internal ulong? FirstUptime;
    internal ulong? LastUptime;

    internal static LlrpReadValues Of(in LlrpTagReport report) => new()
    {
        AntennaId = report.AntennaId,
        PeakRssi = report.PeakRssi,
        Count = report.TagSeenCount,
        FirstUtc = report.FirstSeenUtcMicroseconds,
        LastUtc = report.LastSeenUtcMicroseconds,
        FirstUptime = report.FirstSeenUptimeMicroseconds,
        LastUptime = report.LastSeenUptimeMicroseconds,
    };

    /// <summary>Takes what is absent and meant as before from the values before.</summary>
    internal void Fill(in LlrpReadValues before, LlrpCarryOver which)
    {
        AntennaId ??= (which & LlrpCarryOver.AntennaId) != LlrpCarryOver.None ? before.AntennaId : null;
        PeakRssi ??= (which & LlrpCarryOver.PeakRssi) != LlrpCarryOver.None ? before.PeakRssi : null;
        Count ??= (which & LlrpCarryOver.TagSeenCount) != LlrpCarryOver.None ? before.Count : null;
        if ((which & LlrpCarryOver.FirstSeen) != LlrpCarryOver.None)
        {
            FirstUtc ??= before.FirstUtc;
            FirstUptime ??= before.FirstUptime;
        }

        if ((which & LlrpCarryOver.LastSeen) != LlrpCarryOver.None)
        {
            LastUtc ??= before.LastUtc;
            LastUptime ??= before.LastUptime;
        }
    }
}
