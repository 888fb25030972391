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

    internal readonly TagRead ToRead() => new(
        Tag, Tid, FirstTicks, Has(ReadColumn.LastSeen) ? LastTicks : FirstTicks, ReportId, Count, Strength, Antenna, Fields);

    private readonly ReadFields Fields =>
        (Has(ReadColumn.Rssi) ? ReadFields.Strength : ReadFields.None)
        | (Has(ReadColumn.Count) ? ReadFields.Count : ReadFields.None)
        | (Has(ReadColumn.ReportId) ? ReadFields.ReportId : ReadFields.None);
}
