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
{
    /// <summary>Order of delivery; ties are broken by content, so that the order does not depend on the order of making.</summary>
    public static int CompareDelivery(SimulatedReport one, SimulatedReport other)
    {
        int order = one.DeliveredAt.CompareTo(other.DeliveredAt);
        order = order != 0 ? order : one.Seen.CompareTo(other.Seen);
        order = order != 0 ? order : one.Read.Tag.CompareTo(other.Read.Tag);
        order = order != 0 ? order : one.Read.Antenna.CompareTo(other.Read.Antenna);
        return order != 0 ? order : one.IsRepeat.CompareTo(other.IsRepeat);
    }
}
