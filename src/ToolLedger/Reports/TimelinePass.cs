using System.Collections.Generic;
using System.Linq;
using ToolLedger.Reads;

namespace ToolLedger.Reports;

/// <summary>One pass as a timeline shows it, with a row for each antenna of the station.</summary>
internal sealed record TimelinePass(ReadSession Session, ReadPass Pass, IReadOnlyList<TimelineRow> Rows)
{
    private long SlotTicks => Session.Policy.SlotLength.Ticks;

    /// <summary>The slot in which the pass begins.</summary>
    internal int FirstSlot => (int)((Pass.From.UtcTicks - Session.From.UtcTicks) / SlotTicks);

    /// <summary>How many slots it touches, 1 or more.</summary>
    internal int SlotCount => (int)((Pass.To.UtcTicks - 1 - Session.From.UtcTicks) / SlotTicks) - FirstSlot + 1;

    internal int LookCount => Rows.Sum(static row => row.Looks.Count);

    /// <summary>Whether the tag was silent throughout, on antennas that all worked.</summary>
    internal bool IsPlainlySilent => LookCount == 0 && Rows.All(static row => row.IsShownAtWork);
}
