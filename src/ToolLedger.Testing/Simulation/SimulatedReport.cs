using System;
using System.Runtime.InteropServices;
using ToolLedger.Reads;

namespace ToolLedger.Testing.Simulation;

/// <summary>One report on its way from the reader to the host.</summary>
/// <param name="DeliveredAt">True time at which it reaches the host.</param>
/// <param name="Seen">True time of the read.</param>
/// <param name="IsRepeat">Whether it was delivered before.</param>
/// <param name="Read">What it says, stamped by the reader's clock.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct SimulatedReport(DateTimeOffset DeliveredAt, DateTimeOffset Seen, bool IsRepeat, TagRead Read)
    : IComparable<SimulatedReport>
{
    /// <summary>Order of delivery; ties are broken by content, so that the order does not depend on the order of making.</summary>
    public int CompareTo(SimulatedReport other)
    {
        int order = DeliveredAt.CompareTo(other.DeliveredAt);
        order = order != 0 ? order : Seen.CompareTo(other.Seen);
        order = order != 0 ? order : Read.Tag.CompareTo(other.Read.Tag);
        order = order != 0 ? order : Read.Antenna.Number.CompareTo(other.Read.Antenna.Number);
        return order != 0 ? order : IsRepeat.CompareTo(other.IsRepeat);
    }
}
