using System;
using ToolLedger.Identifiers;
using ToolLedger.Reads;

namespace ToolLedger.Interchange.Llrp;

/// <summary>Makes reads of the tag reports of one stream.</summary>
/// <remarks>
/// <para>A report is an interval: its read begins at the first sighting and ends at the last; where only one is stated, both are that one. An
/// absent antenna stays not known, and so does antenna 0, which names none. The sightings merged in a report never become more than
/// the looks at its two ends.</para>
/// <para>A report that breaks a rule makes no read: it is counted and told. A good read of a tag of up to 128 bits costs no memory.</para>
/// <para>Not thread-safe: one stream, one thread at a time.</para>
/// </remarks>
public sealed class LlrpReadBuilder
{
    private const int ParameterPrefix = 4;

    private readonly LlrpReadOptions _options;
    private readonly Action<LlrpFault>? _onFault;
    private readonly LlrpTemplate?[] _templates = new LlrpTemplate?[LlrpTemplate.KnownMax];
    private readonly bool _isLearning;
    private LlrpTemplate? _template;
    private LlrpReadValues _before;

    /// <summary>Makes a builder for one stream.</summary>
    /// <param name="options">How reads are made; null for the defaults.</param>
    /// <param name="onFault">Is told of every report that makes no read, and of every broken rest of a message.</param>
    public LlrpReadBuilder(LlrpReadOptions? options = null, Action<LlrpFault>? onFault = null)
    {
        _options = options ?? new LlrpReadOptions();
        _onFault = onFault;
        _isLearning = _options is { TimeSource: ReadTimeSource.ReaderClock, CarryOver: LlrpCarryOver.None };
    }

    /// <summary>How many reads were made.</summary>
    public long ReadCount { get; private set; }

    /// <summary>How many faults there were.</summary>
    public long FaultCount { get; private set; }

    /// <summary>Makes reads of the next reports of a message.</summary>
    /// <param name="reports">The reports; afterwards those that are still to be read.</param>
    /// <param name="arrival">When the message arrived at the host.</param>
    /// <param name="destination">Where the reads go.</param>
    /// <returns>How many reads were made. Fewer than there is room for: the message is at its end.</returns>
    public int Read(ref LlrpReports reports, DateTimeOffset arrival, Span<TagRead> destination)
    {
        int count = 0;
        while (count < destination.Length)
        {
            if (_template is not null)
            {
                count += LlrpTemplate.Read(_templates, ref _template, reports.Rest, destination[count..], out int length);
                reports.Skip(length);
                if (count == destination.Length || reports.Rest.IsEmpty)
                {
                    break;
                }
            }

            if (!reports.TryRead(out LlrpTagReport report))
            {
                break;
            }

            count += TryRead(report, arrival, out destination[count]) ? 1 : 0;
        }

        ReadCount += count;
        return count;
    }

    private bool TryRead(in LlrpTagReport report, DateTimeOffset arrival, out TagRead read)
    {
        read = default;
        if (report.Fault is { } fault)
        {
            Tell(fault);
            return false;
        }

        LlrpReadValues values = LlrpReadValues.Of(report);
        values.Fill(_before, _options.CarryOver);
        _before = values;
        int tidOffset = FindTid(report, out int tidBitCount);
        LlrpRule rule = TryPlace(values, arrival, out long first, out long last, out ulong found);
        rule = rule == LlrpRule.None ? Check(values, tidBitCount, out found) : rule;
        if (rule != LlrpRule.None)
        {
            Tell(report.FaultOf(rule, found));
            return false;
        }

        Tid tid = tidBitCount > 0 ? Tid.FromBytes(report.Bytes[tidOffset..], tidBitCount) : default;
        ReadFields given = (values.Count > 0 ? ReadFields.Count : ReadFields.None) | (values.PeakRssi.HasValue ? ReadFields.Strength : ReadFields.None);
        read = new TagRead(report.Tag, tid, first, last, 0, values.Count.GetValueOrDefault(), (short)(values.PeakRssi.GetValueOrDefault() * 100),
            (byte)values.AntennaId.GetValueOrDefault(), given);
        if (_isLearning && LlrpTemplate.Suits(report, tidBitCount))
        {
            _template = _templates[LlrpTemplate.PlaceOf(report.Bytes)] = new LlrpTemplate(report, tidOffset, tidBitCount);
        }

        return true;
    }

    private static LlrpRule Check(in LlrpReadValues values, int tidBitCount, out ulong found)
    {
        if (values.AntennaId > byte.MaxValue)
        {
            found = (ulong)values.AntennaId;
            return LlrpRule.AntennaOutOfRange;
        }

        found = (ulong)tidBitCount;
        return tidBitCount > Tid.MaxBitCount ? LlrpRule.TidTooLong : LlrpRule.None;
    }

    private LlrpRule TryPlace(in LlrpReadValues values, DateTimeOffset arrival, out long first, out long last, out ulong found)
    {
        found = 0;
        first = last = arrival.UtcTicks;
        if (_options.TimeSource == ReadTimeSource.HostArrival)
        {
            return LlrpRule.None;
        }

        bool isUtc = (values.FirstUtc ?? values.LastUtc) is not null;
        ulong? from = isUtc ? values.FirstUtc ?? values.LastUtc : values.FirstUptime ?? values.LastUptime;
        ulong? to = isUtc ? values.LastUtc ?? from : values.LastUptime ?? from;
        if (from is null || to is null || !(isUtc || _options.ClockCheck.HasValue))
        {
            return LlrpRule.NoTime;
        }

        if (!TryTicks(from.Value, isUtc, out first) || !TryTicks(to.Value, isUtc, out last))
        {
            found = Math.Max(from.Value, to.Value);
            return LlrpRule.TimeOutOfRange;
        }

        found = to.Value;
        return last < first ? LlrpRule.TimesReversed : LlrpRule.None;
    }

    private bool TryTicks(ulong microseconds, bool isUtc, out long ticks) => isUtc
        ? LlrpTime.TryFromUtc(microseconds, out ticks)
        : LlrpTime.TryFromUptime(microseconds, _options.ClockCheck.GetValueOrDefault(), out ticks);

    /// <summary>Where the words of the TID stand in the report, and how many bits they have; 0 when they were not read.</summary>
    private int FindTid(in LlrpTagReport report, out int bitCount)
    {
        bitCount = 0;
        if (_options.TidOpSpecId is not { } wanted)
        {
            return 0;
        }

        var reader = new LlrpParameterReader(report.Bytes, ParameterPrefix);
        while (reader.TryRead())
        {
            if (reader is { Type: LlrpParameterType.ReadResult, IsFixed: false }
                && new LlrpParameter(reader.Type, reader.IsFixed, reader.Value).TryReadAccessResult(out LlrpAccessResult result)
                && result.IsSuccess && result.OpSpecId == wanted && !result.Words.IsEmpty)
            {
                bitCount = result.Words.Length * 8;
                return reader.End - result.Words.Length;
            }
        }

        return 0;
    }

    private void Tell(in LlrpFault fault)
    {
        FaultCount++;
        _onFault?.Invoke(fault);
    }
}
