using System.Runtime.InteropServices;
using ToolLedger.Identifiers;
using ToolLedger.Reads;
using ToolLedger.Tools;

namespace ToolLedger.Interchange;

/// <summary>A row while its fields come in, in any order.</summary>
[StructLayout(LayoutKind.Auto)]
internal struct ReadDraft
{
    internal TagId Tag;
    internal Tid Tid;
    internal long FirstTicks;
    internal long LastTicks;
    internal long ReportId;
    internal int Count;
    internal short Strength;
    internal byte Antenna;

    /// <summary>One bit for each column that had a value.</summary>
    internal uint Given;

    internal readonly bool Has(ReadColumn column) => (Given & (1u << (int)column)) != 0;

    internal void Give(ReadColumn column) => Given |= 1u << (int)column;

    internal readonly TagRead ToRead()
    {
        var read = new TagRead(Tag, Antenna, FirstTicks, Has(ReadColumn.LastSeen) ? LastTicks : FirstTicks);
        const uint Plain = (1u << (int)ReadColumn.Tag) | (1u << (int)ReadColumn.FirstSeen) | (1u << (int)ReadColumn.Antenna)
            | (1u << (int)ReadColumn.LastSeen);
        return (Given & ~Plain) == 0 ? read : read with
        {
            Tid = Tid,
            Strength = Has(ReadColumn.Rssi) ? new Rssi(Strength) : null,
            Count = Has(ReadColumn.Count) ? Count : null,
            ReportId = Has(ReadColumn.ReportId) ? ReportId : null,
        };
    }
}
