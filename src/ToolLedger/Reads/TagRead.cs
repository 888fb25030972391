using System;
using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;
using ToolLedger.Identifiers;
using ToolLedger.Tools;

namespace ToolLedger.Reads;

/// <summary>One report of a reader: a tag answered, on an antenna, once or several times between two instants.</summary>
/// <remarks>
/// <para>Only the tag is always there; antenna, strength, count, TID and report id are kept where the reader gives them.
/// Times are the reader's claim, kept in UTC; the session corrects them by the measured clock offset. Which reader saw
/// it is a matter of the session or log that the read is added to.</para>
/// <para>Equal when every member is equal. The default value has an empty tag at 0001-01-01T00:00:00Z. Immutable.</para>
/// </remarks>
public readonly record struct TagRead
{
    private readonly TagId _tag;
    private readonly Tid _tid;
    private readonly long _firstTicks;
    private readonly long _lastTicks;
    private readonly long _reportId;
    private readonly int _count;

    // Strength, antenna and what was given, from the low end on: they are kept and compared together.
    private readonly uint _facts;

    private const int AntennaShift = 16;
    private const int GivenShift = 24;

    /// <summary>A tag seen at one instant.</summary>
    /// <param name="tag">What answered.</param>
    /// <param name="antenna">On which antenna; the default value when the reader does not say.</param>
    /// <param name="seen">When, by the reader's clock.</param>
    public TagRead(TagId tag, AntennaPort antenna, DateTimeOffset seen)
    {
        _tag = tag;
        _facts = FactsOf(0, antenna.Number, ReadFields.None);
        _firstTicks = _lastTicks = seen.UtcTicks;
    }

    // Trusted: the file readers have checked every value.
    internal TagRead(
        in TagId tag, in Tid tid, long firstTicks, long lastTicks, long reportId, int count, short strength, byte antenna, ReadFields given)
    {
        _tag = tag;
        _tid = tid;
        _firstTicks = firstTicks;
        _lastTicks = lastTicks;
        _reportId = reportId;
        _count = count;
        _facts = FactsOf(strength, antenna, given);
    }

    /// <summary>Writes the instants of a read into its place: a stream of reads costs more in copies of this struct than in anything else. The three
    /// methods together write a whole read, without a TID or a report number.</summary>
    /// <remarks>Trusted: the caller checks every value. The place is an element of the caller's own array, so no copy is seen to change.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static void WriteTimes(ref TagRead place, long firstTicks, long lastTicks)
    {
        Unsafe.AsRef(in place._firstTicks) = firstTicks;
        Unsafe.AsRef(in place._lastTicks) = lastTicks;
        Unsafe.AsRef(in place._reportId) = 0;
    }

    /// <summary>Writes a Gen2 tag of at most eight 16-bit words.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static void WriteTag(ref TagRead place, ulong high, ulong low, int bitCount)
    {
        Unsafe.AsRef(in place._tag) = TagId.FromWords(high, low, bitCount);
        Unsafe.AsRef(in place._tid) = default;
    }

    /// <summary>Writes what else a reader says.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static void WriteRest(ref TagRead place, int count, short strength, byte antenna, ReadFields given)
    {
        Unsafe.AsRef(in place._count) = count;
        Unsafe.AsRef(in place._facts) = FactsOf(strength, antenna, given);
    }

    internal static void WriteAntenna(ref TagRead place, byte antenna) =>
        Unsafe.AsRef(in place._facts) = (place._facts & ~((uint)byte.MaxValue << AntennaShift)) | ((uint)antenna << AntennaShift);

    internal static void WriteStrength(ref TagRead place, short strength) =>
        Unsafe.AsRef(in place._facts) = (place._facts & ~(uint)ushort.MaxValue) | (ushort)strength;

    internal static void WriteCount(ref TagRead place, int count) => Unsafe.AsRef(in place._count) = count;

    internal static void WriteFields(ref TagRead place, ReadFields given) =>
        Unsafe.AsRef(in place._facts) = (place._facts & ~InFacts((ReadFields)byte.MaxValue)) | InFacts(given);

    /// <summary>What answered.</summary>
    public TagId Tag => _tag;

    /// <summary>The antenna; the default value when the reader does not say.</summary>
    public AntennaPort Antenna => AntennaPort.FromNumber(AntennaNumber);

    /// <summary>The chip's TID; empty when it was not read.</summary>
    public Tid Tid
    {
        get => _tid;
        init => _tid = value;
    }

    /// <summary>The first instant the report covers, by the reader's clock, in UTC.</summary>
    public DateTimeOffset FirstSeen => new(_firstTicks, TimeSpan.Zero);

    /// <summary>The last instant the report covers, by the reader's clock, in UTC. Equal to <see cref="FirstSeen"/>
    /// unless set.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is set to an instant before <see cref="FirstSeen"/>.</exception>
    public DateTimeOffset LastSeen
    {
        get => new(_lastTicks, TimeSpan.Zero);
        init => _lastTicks = value.UtcTicks >= _firstTicks
            ? value.UtcTicks
            : throw new ArgumentOutOfRangeException(nameof(value), value, "A read cannot end before it begins.");
    }

    /// <summary>The signal strength; null when the reader does not say.</summary>
    public Rssi? Strength
    {
        get => HasStrength ? new Rssi(CentiDbm) : null;
        init
        {
            _facts = FactsOf(value.GetValueOrDefault().CentiDbm, AntennaNumber, With(ReadFields.Strength, value.HasValue));
        }
    }

    /// <summary>How many times the tag answered in this report, 1 or more; null when the reader does not say. It never
    /// counts as more than the two looks at <see cref="FirstSeen"/> and <see cref="LastSeen"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is set to less than 1.</exception>
    public int? Count
    {
        get => (Given & ReadFields.Count) != ReadFields.None ? _count : null;
        init
        {
            _count = value is null or >= 1 ? value.GetValueOrDefault()
                : throw new ArgumentOutOfRangeException(nameof(value), value, "A read counts at least one answer.");
            _facts = FactsOf(CentiDbm, AntennaNumber, With(ReadFields.Count, value.HasValue));
        }
    }

    /// <summary>The number the source gave this report, the same each time it is delivered; null when there is none.</summary>
    public long? ReportId
    {
        get => HasReportId ? _reportId : null;
        init
        {
            _reportId = value.GetValueOrDefault();
            _facts = FactsOf(CentiDbm, AntennaNumber, With(ReadFields.ReportId, value.HasValue));
        }
    }

    [UnscopedRef]
    internal ref readonly TagId TagInPlace => ref _tag;

    internal long FirstTicks => _firstTicks;

    internal long LastTicks => _lastTicks;

    internal byte AntennaNumber => (byte)(_facts >> AntennaShift);

    internal bool HasStrength => (Given & ReadFields.Strength) != ReadFields.None;

    internal bool HasReportId => (Given & ReadFields.ReportId) != ReadFields.None;

    internal bool HasTid => !_tid.IsEmpty;

    internal short CentiDbm => (short)_facts;

    internal int CountOrZero => _count;

    internal long ReportIdOrZero => _reportId;

    internal ReadFields Given => (ReadFields)(_facts >> GivenShift);

    /// <summary>Strength, antenna and what was given, in one word.</summary>
    internal uint Facts => _facts;

    /// <summary>What was given, where it stands in <see cref="Facts"/>.</summary>
    internal static uint InFacts(ReadFields given) => (uint)given << GivenShift;

    private static uint FactsOf(short strength, byte antenna, ReadFields given) =>
        (ushort)strength | ((uint)antenna << AntennaShift) | InFacts(given);

    private ReadFields With(ReadFields field, bool isGiven) => isGiven ? Given | field : Given & ~field;
}
