using System;
using System.Collections.Generic;

namespace ToolLedger.Records;

/// <summary>
/// The order in which facts take effect: by the instant, whatever clock offset it was written with; within one instant what ends comes before what begins; then by id, and by digest where two share one.
/// It depends on the facts alone, so that two stations that hold the same facts come to the same state.
/// </summary>
internal sealed class EntryOrder(Func<RecordEntry, int> rankOf) : IComparer<RecordEntry>
{
    public int Compare(RecordEntry? x, RecordEntry? y)
    {
        ArgumentNullException.ThrowIfNull(x);
        ArgumentNullException.ThrowIfNull(y);
        if (ReferenceEquals(x, y))
        {
            return 0;
        }

        int order = x.At.UtcTicks.CompareTo(y.At.UtcTicks);
        order = order != 0 ? order : rankOf(x).CompareTo(rankOf(y));
        order = order != 0 ? order : string.CompareOrdinal(x.Id.Value, y.Id.Value);
        return order != 0 ? order : string.CompareOrdinal(x.Digest.ToString(), y.Digest.ToString());
    }
}
