using System;
using System.Globalization;
using System.Runtime.CompilerServices;
using ToolLedger.Records;

namespace ToolLedger.Reads;

/// <summary>When a read session is usable, what counts as one look, and the limits of what is kept.</summary>
/// <remarks>The defaults are our example values, not a directive's. Changed with <c>with</c>; equal when every value is.
/// Immutable and thread-safe.</remarks>
public sealed partial record SessionPolicy
{
    /// <summary>How near to each end of the session the control tags must be seen.</summary>
    /// <value>0.1 s to 1 h. The default is 5 s.</value>
    /// <exception cref="ArgumentOutOfRangeException">It is set out of range.</exception>
    public TimeSpan ControlTagEdge { get; init => field = Check(value, ControlTagEdgeRange); } = TimeSpan.FromSeconds(5);

    /// <summary>The shortest session that is a measurement.</summary>
    /// <value>0 s to 24 h. The default is 20 s.</value>
    /// <exception cref="ArgumentOutOfRangeException">It is set out of range.</exception>
    public TimeSpan MinimumWindow { get; init => field = Check(value, MinimumWindowRange); } = TimeSpan.FromSeconds(20);

    /// <summary>The longest session; reads later than its start plus this are outside.</summary>
    /// <value>1 min to 7 days. The default is 1 hour (ours).</value>
    /// <exception cref="ArgumentOutOfRangeException">It is set out of range.</exception>
    public TimeSpan MaximumWindow { get; init => field = Check(value, MaximumWindowRange); } = TimeSpan.FromHours(1);

    /// <summary>Up to this offset, measured at both ends, the reader's clock may also wander during the session; a larger offset is fine only while it stays constant within <see cref="ClockDriftMax"/>. Either way times are corrected by the first measurement.</summary>
    /// <value>0 s to 1 h. The default is 2 s.</value>
    /// <exception cref="ArgumentOutOfRangeException">It is set out of range.</exception>
    public TimeSpan ClockOffsetMax { get; init => field = Check(value, ClockOffsetMaxRange); } = TimeSpan.FromSeconds(2);

    /// <summary>How far the offsets measured at both ends may differ for the clock to be called constant. A constant offset
    /// of any size is corrected.</summary>
    /// <value>0 s to 1 h. The default is 0.5 s.</value>
    /// <exception cref="ArgumentOutOfRangeException">It is set out of range.</exception>
    public TimeSpan ClockDriftMax { get; init => field = Check(value, ClockDriftMaxRange); } = TimeSpan.FromSeconds(0.5);

    /// <summary>The length of a time slot: all reads of a tag on an antenna in one slot are one look.</summary>
    /// <value>0.01 s to 60 s. The default is 0.5 s.</value>
    /// <exception cref="ArgumentOutOfRangeException">It is set out of range.</exception>
    public TimeSpan SlotLength { get; init => field = Check(value, SlotLengthRange); } = TimeSpan.FromSeconds(0.5);

    /// <summary>The longest time without any look on an antenna that should hear its control tag.</summary>
    /// <remarks>
    /// Only the slot of a look is kept, so a silence is measured from the start of the slot of the look before it, or of the session, to the end of the slot of the look behind it, or of the session: none that is longer
    /// than the limit passes unnoticed, and one that is shorter by less than two slots may be reported. Looks in neighbouring slots are never a silence: below a limit of two slots, silences of up to two slots are not seen.
    /// </remarks>
    /// <value>1 s to 24 h. The default is 10 s.</value>
    /// <exception cref="ArgumentOutOfRangeException">It is set out of range.</exception>
    public TimeSpan SilenceGapMax { get; init => field = Check(value, SilenceGapMaxRange); } = TimeSpan.FromSeconds(10);

    /// <summary>How long after its own last instant a report that is delivered again is still told from a new one, measured
    /// against the latest instant reported so far.</summary>
    /// <value>0 s to 24 h. The default is 60 s.</value>
    /// <exception cref="ArgumentOutOfRangeException">It is set out of range.</exception>
    public TimeSpan RepeatHorizon { get; init => field = Check(value, RepeatHorizonRange); } = TimeSpan.FromSeconds(60);

    /// <summary>How many of the latest reports are kept to tell a repeat from a new one.</summary>
    /// <value>0 to 1,048,576 reports. The default is 65,536.</value>
    /// <exception cref="ArgumentOutOfRangeException">It is set out of range.</exception>
    public int RepeatReportCount { get; init => field = Check(value, RepeatReportCountRange); } = 65_536;

    /// <summary>How many looks are kept of each tag in each pass on each antenna: the earliest ones.</summary>
    /// <value>1 to 4,096 looks. The default is 128.</value>
    /// <exception cref="ArgumentOutOfRangeException">It is set out of range.</exception>
    public int LooksKept { get; init => field = Check(value, LooksKeptRange); } = 128;

    /// <summary>How many different tags a session keeps. Over it the session is invalid.</summary>
    /// <value>1 to 4,000,000 tags. The default is 2,000,000.</value>
    /// <exception cref="ArgumentOutOfRangeException">It is set out of range.</exception>
    public int TagLimit { get; init => field = Check(value, TagLimitRange); } = 2_000_000;

    /// <summary>How many looks a session keeps in all. Over it the session is invalid.</summary>
    /// <value>1 to 268,435,456 looks. The default is 67,108,864.</value>
    /// <exception cref="ArgumentOutOfRangeException">It is set out of range.</exception>
    public int LookLimit { get; init => field = Check(value, LookLimitRange); } = 67_108_864;

    /// <summary>The largest offset of the reader's clock that may be corrected at all; beyond it the session is invalid, since old reads could be passed off as new ones.</summary>
    /// <value>1 second to 36,525 days. The default is 1 day (ours): a wrong time zone or date line, not a wrong month.</value>
    /// <exception cref="ArgumentOutOfRangeException">It is set out of range.</exception>
    public TimeSpan ClockCorrectionMax { get; init => field = Check(value, ClockCorrectionMaxRange); } = TimeSpan.FromDays(1);

    /// <summary>The shortest pass that counts as a separate view; a shorter one is joined with its neighbour.</summary>
    /// <value>0 to 3,600 seconds. The default is 5 seconds (ours): turning or moving a bag takes that long.</value>
    /// <exception cref="ArgumentOutOfRangeException">It is set out of range.</exception>
    public TimeSpan MinimumPass { get; init => field = Check(value, MinimumPassRange); } = TimeSpan.FromSeconds(5);

    /// <summary>How long before the instant of a reconciliation a session may have ended and still settle lines: a read from the start of a shift says nothing of its end.</summary>
    /// <value>1 second to 366 days. The default is 1 hour (ours).</value>
    /// <exception cref="ArgumentOutOfRangeException">It is set out of range.</exception>
    public TimeSpan SessionAgeMax { get; init => field = Check(value, SessionAgeMaxRange); } = TimeSpan.FromHours(1);

    /// <summary>How far from the session a read may be stamped without showing that the reader's clock was reset or jumped. One stamped farther makes the session
    /// invalid: a jump to the start of the reader's epoch must never look like an empty bag.</summary>
    /// <value>1 day to 36,525 days. The default is 30 days (ours).</value>
    /// <exception cref="ArgumentOutOfRangeException">It is set out of range.</exception>
    public TimeSpan StampDistanceMax { get; init => field = Check(value, StampDistanceMaxRange); } = TimeSpan.FromDays(30);

    /// <summary>Whether a session may be placed in time by the host's clock at the arrival of its reports (<see cref="ReadTimeSource.HostArrival"/>), where the
    /// reader's clock cannot be used. Such a session is degraded at best: a buffered report arrives later than its read.</summary>
    /// <value>The default is false: such a session is invalid.</value>
    public bool HostArrivalAccepted { get; init; }

    /// <summary>How long after its end a session stays open for reads stamped inside it that arrive late. The library has no clock, so the host acts on it
    /// (<see cref="AcceptsUntil"/>); a read stamped after the end is outside the window however early it arrives.</summary>
    /// <value>0 s to 24 h. The default is 30 s (ours).</value>
    /// <exception cref="ArgumentOutOfRangeException">It is set out of range.</exception>
    public TimeSpan LateReadGrace { get; init => field = Check(value, LateReadGraceRange); } = TimeSpan.FromSeconds(30);

    /// <summary>Until when, by the host's clock, reads of a session may still be added; then it is closed, and what arrives later is late evidence.</summary>
    /// <param name="end">The end of the session.</param>
    /// <returns>The end and <see cref="LateReadGrace"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The end is outside the years 1970 to 2999.</exception>
    public DateTimeOffset AcceptsUntil(DateTimeOffset end) => RecordTime.Require(end, nameof(end)) + LateReadGrace;

    private static TimeSpan Check(TimeSpan value, (TimeSpan Lowest, TimeSpan Highest) range, [CallerMemberName] string name = "") =>
        value >= range.Lowest && value <= range.Highest
            ? value
            : throw new ArgumentOutOfRangeException(name, value, string.Create(
                CultureInfo.InvariantCulture, $"Must be {range.Lowest.TotalSeconds} to {range.Highest.TotalSeconds} seconds."));

    private static int Check(int value, (int Lowest, int Highest) range, [CallerMemberName] string name = "") =>
        value >= range.Lowest && value <= range.Highest
            ? value
            : throw new ArgumentOutOfRangeException(
                name, value, string.Create(CultureInfo.InvariantCulture, $"Must be {range.Lowest} to {range.Highest}."));
}
