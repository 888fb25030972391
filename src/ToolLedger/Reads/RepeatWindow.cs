using System;
using System.Numerics;
using System.Runtime.CompilerServices;

namespace ToolLedger.Reads;

/// <summary>
/// Tells whether an equal report was delivered before: exactly, among the latest reports kept and inside the horizon of
/// report time. Reports lie in a ring; each bucket leads to its newest report, each report to the one before it in its
/// bucket, and a chain ends at the first report that the ring no longer keeps, so that nothing is ever removed. Reports that
/// come in order of time need no look-up; they are put into their chains when the first one comes that does.
/// </summary>
internal sealed class RepeatWindow
{
    private const int FirstLength = 256;

    private const long NoId = -1;

    private readonly int _limit;
    private readonly int _fullLength;
    private readonly long _horizonTicks;
    private ReportEntry[] _ring = [];

    // By place in the ring; made when the first report comes that has one.
    private ReportTail[]? _tails;

    // By place in the ring, and by bucket: made when first needed.
    private long[] _before = [];
    private long[] _byContent = [];
    private long[]? _ids;
    private long[] _idBefore = [];
    private long[] _byId = [];

    // Reports are numbered from 1: 0 in a bucket or chain means "none".
    private long _number;
    private long _linked;
    private long _firstWithId;
    private long _latestTicks = long.MinValue;

    // The number up to which a report that is later than all others is noted without further care.
    private long _plainTo;

    internal RepeatWindow(SessionPolicy policy)
    {
        _limit = policy.RepeatReportCount;
        _fullLength = (int)BitOperations.RoundUpToPowerOf2((uint)_limit);
        _horizonTicks = policy.RepeatHorizon.Ticks;
        if (_limit == 0)
        {
            // Nothing is asked for, so that one place takes every report.
            _ring = new ReportEntry[1];
            _plainTo = long.MaxValue;
        }
    }

    /// <summary>The latest instant reported so far.</summary>
    internal long LatestTicks => _latestTicks;

    /// <summary>How many reports, each later than all before it and without a number of its own, may be noted by <see cref="NotePlain"/> now.</summary>
    internal long PlainRoom => Math.Max(0, _plainTo - _number);

    /// <summary>Whether an equal report is known; in any case the report is known from now on.</summary>
    internal bool Observe(int tag, in TagRead read)
    {
        if (read.LastTicks <= _latestTicks || _number >= _plainTo || read.HasReportId)
        {
            return ObserveWithCare(tag, read);
        }

        _number++;
        _latestTicks = read.LastTicks;
        Note(tag, read);
        return false;
    }

    /// <summary>Notes reports each of which is later than all before it, and so equal to none of them: no more than <see cref="PlainRoom"/>, and none with a number of its own.</summary>
    /// <param name="reads">The reports, of one instant each.</param>
    /// <param name="tags">The number of the tag of each; -1 for a report that is not to be noted.</param>
    [MethodImpl(MethodImplOptions.NoInlining)]
    internal void NotePlain(ReadOnlySpan<TagRead> reads, ReadOnlySpan<int> tags)
    {
        ReportEntry[] ring = _ring;
        long number = _number;
        long latest = _latestTicks;
        for (int i = 0; i < tags.Length; i++)
        {
            int tag = tags[i];
            if (tag < 0)
            {
                continue;
            }

            ref readonly TagRead read = ref reads[i];
            number++;
            latest = read.LastTicks;
            ref ReportEntry place = ref ring[number & (ring.Length - 1)];
            place = new ReportEntry(tag, read);
            if (place.HasTail)
            {
                _number = number;
                NoteTail(read);
            }
        }

        _number = number;
        _latestTicks = latest;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private bool ObserveWithCare(int tag, in TagRead read)
    {
        bool isLater = read.LastTicks > _latestTicks;
        _latestTicks = isLater ? read.LastTicks : _latestTicks;
        if (_limit == 0)
        {
            return false;
        }

        _number++;
        if (_number >= _ring.Length && _ring.Length < _fullLength)
        {
            Grow();
        }

        bool repeat = !isLater && _latestTicks - read.LastTicks <= _horizonTicks && IsContentKnown(tag, read);
        if (read.HasReportId || _ids is not null)
        {
            repeat |= ObserveId(read);
        }

        Note(tag, read);
        _plainTo = _ids is not null ? 0 : _ring.Length < _fullLength ? _ring.Length - 1 : long.MaxValue;
        return repeat;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Note(int tag, in TagRead read)
    {
        ref ReportEntry place = ref _ring[_number & (_ring.Length - 1)];
        place = new ReportEntry(tag, read);
        if (place.HasTail)
        {
            NoteTail(read);
        }
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private void NoteTail(in TagRead read) => (_tails ??= new ReportTail[_ring.Length])[Place(_number)] = TailOf(read);

    private static ReportTail TailOf(in TagRead read) => new(read.LastTicks, read.CountOrZero);

    private bool IsContentKnown(int tag, in TagRead read)
    {
        LinkAllBefore(_number);
        var report = new ReportEntry(tag, read);
        ReportTail tail = report.HasTail ? TailOf(read) : default;
        for (long at = _byContent[HashOf(report, tail) & (_byContent.Length - 1)]; IsKept(at); at = _before[Place(at)])
        {
            if (_ring[Place(at)].Equals(report) && TailAt(at) == tail)
            {
                return true;
            }
        }

        return false;
    }

    // Puts the reports that were only noted into their chains, in order, and leaves out what the ring no longer keeps.
    private void LinkAllBefore(long number)
    {
        if (_before.Length != _ring.Length)
        {
            _before = new long[_ring.Length];
            _byContent = new long[_ring.Length];
            _linked = 0;
        }

        for (long at = Math.Max(_linked + 1, number - _ring.Length); at < number; at++)
        {
            Link(_byContent, _before, HashOf(_ring[Place(at)], TailAt(at)), at);
        }

        _linked = number - 1;
    }

    private bool ObserveId(in TagRead read)
    {
        if (_ids is null)
        {
            _ids = new long[_ring.Length];
            _idBefore = new long[_ring.Length];
            _byId = new long[_ring.Length];
            _firstWithId = _number;
        }

        if (!read.HasReportId)
        {
            _idBefore[Place(_number)] = NoId;
            return false;
        }

        long id = read.ReportIdOrZero;
        bool repeat = false;
        for (long at = _byId[HashOf(id) & (_byId.Length - 1)]; !repeat && IsKept(at); at = _idBefore[Place(at)])
        {
            repeat = _ids[Place(at)] == id && _latestTicks - LastTicksAt(at) <= _horizonTicks;
        }

        _ids[Place(_number)] = id;
        Link(_byId, _idBefore, HashOf(id), _number);
        return repeat;
    }

    private ReportTail TailAt(long number) => _ring[Place(number)].HasTail ? _tails![Place(number)] : default;

    private long LastTicksAt(long number) => _ring[Place(number)].HasTail ? _tails![Place(number)].LastTicks : _ring[Place(number)].FirstTicks;

    private static long HashOf(in ReportEntry report, ReportTail tail) => (long)((report.ContentHash + tail.Hash) >> 32);

    private static long HashOf(long id) => (long)(((ulong)id * 0x9E3779B97F4A7C15UL) >> 32);

    private bool IsKept(long number) => number > 0 && _number - number <= _limit;

    private int Place(long number) => (int)number & (_ring.Length - 1);

    private void Link(long[] buckets, long[] before, long hash, long number)
    {
        ref long bucket = ref buckets[hash & (buckets.Length - 1)];
        before[Place(number)] = bucket;
        bucket = number;
    }

    // Nothing has been overwritten before the ring has its full length, so every report keeps its place.
    private void Grow()
    {
        Array.Resize(ref _ring, Math.Min(Math.Max(FirstLength, _ring.Length * 2), _fullLength));
        if (_tails is not null)
        {
            Array.Resize(ref _tails, _ring.Length);
        }

        if (_ids is null)
        {
            return;
        }

        long[] before = _idBefore;
        Array.Resize(ref _ids, _ring.Length);
        _idBefore = new long[_ring.Length];
        _byId = new long[_ring.Length];
        for (long number = _firstWithId; number < _number; number++)
        {
            if (before[number] == NoId)
            {
                _idBefore[number] = NoId;
            }
            else
            {
                Link(_byId, _idBefore, HashOf(_ids[number]), number);
            }
        }
    }
}
