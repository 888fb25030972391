using System;
using ToolLedger.Reads;

namespace ToolLedger.Interchange.Llrp;

/// <summary>How reads are made of tag reports.</summary>
/// <remarks>Changed with <c>with</c>. Immutable and thread-safe.</remarks>
public sealed record LlrpReadOptions
{
    private const LlrpCarryOver Everything = LlrpCarryOver.AntennaId | LlrpCarryOver.PeakRssi | LlrpCarryOver.FirstSeen | LlrpCarryOver.LastSeen | LlrpCarryOver.TagSeenCount;

    /// <summary>Whose times the reads get; the same as the presentation states. The default is the reader's clock: UTC where the report has it,
    /// otherwise the uptime with <see cref="ClockCheck"/>. A report with neither makes no read.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such source.</exception>
    public ReadTimeSource TimeSource
    {
        get;
        init => field = Enum.IsDefined(value) ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "There is no such source of times.");
    }

    /// <summary>How the reader's uptime was compared with the host's clock; null when it was not, and then uptimes place nothing.</summary>
    public LlrpClockCheck? ClockCheck { get; init; }

    /// <summary>The id of the read operation that returns words of the tag's TID memory, from word 0 on; null when none does.</summary>
    /// <value>0 to 65,535. The default is null.</value>
    /// <exception cref="ArgumentOutOfRangeException">It is set out of range.</exception>
    public int? TidOpSpecId
    {
        get;
        init => field = value is null or (>= 0 and <= ushort.MaxValue)
            ? value
            : throw new ArgumentOutOfRangeException(nameof(value), value, "The id of an operation is 0 to 65535.");
    }

    /// <summary>Which absent values are taken from the reports before. The default is none.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There are no such values.</exception>
    public LlrpCarryOver CarryOver
    {
        get;
        init => field = (value & ~Everything) == LlrpCarryOver.None
            ? value
            : throw new ArgumentOutOfRangeException(nameof(value), value, "There are no such values.");
    }
}
