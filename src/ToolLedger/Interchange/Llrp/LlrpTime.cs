using System;
using ToolLedger.Records;

namespace ToolLedger.Interchange.Llrp;

/// <summary>From the protocol's microseconds, 64 bits without a sign, to ticks of UTC in the years 1970 to 2999.</summary>
internal static class LlrpTime
{
    internal const long EpochTicks = 621_355_968_000_000_000;

    private static readonly long EndTicks = new DateTime(RecordTime.LastYear + 1, 1, 1, 0, 0, 0, DateTimeKind.Utc).Ticks;

    /// <summary>The first count of microseconds since 1970 that is too large.</summary>
    internal static readonly ulong MicrosecondsEnd = (ulong)(EndTicks - EpochTicks) / TimeSpan.TicksPerMicrosecond;

    /// <summary>Ticks of a count below <see cref="MicrosecondsEnd"/>.</summary>
    internal static long TicksOf(ulong utcMicroseconds) => EpochTicks + ((long)utcMicroseconds * TimeSpan.TicksPerMicrosecond);

    internal static bool TryFromUtc(ulong microseconds, out long ticks)
    {
        bool fits = microseconds < MicrosecondsEnd;
        ticks = fits ? TicksOf(microseconds) : 0;
        return fits;
    }

    internal static bool TryFromUptime(ulong microseconds, LlrpClockCheck check, out long ticks)
    {
        Int128 exact = ((Int128)microseconds - check.UptimeMicroseconds) * TimeSpan.TicksPerMicrosecond + check.At.UtcTicks;
        bool fits = exact >= EpochTicks && exact < EndTicks;
        ticks = fits ? (long)exact : 0;
        return fits;
    }
}
