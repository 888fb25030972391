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
    private readonly long _horizonTicks;
    private readonly ReportRing _ring;

    // How many places buckets and chains have: as many as the ring in the end, and until then at least as many as there are reports.
    private int _length;

    // By place, and by bucket: made when first needed.
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

    internal RepeatWindow(SessionPolicy policy)
    {
        // Where nothing is asked for, reports are written down all the same, and never read.
        _limit = policy.RepeatReportCount;
        _ring = new ReportRing((int)BitOperations.RoundUpToPowerOf2((uint)Math.Max(TagTable.BatchLength, _limit)));
        _length = Math.Min(FirstLength, _ring.Length);
        _horizonTicks = policy.RepeatHorizon.Ticks;
    }

    /// <summary>The latest instant reported so far.</summary>
    internal long LatestTicks => _latestTicks;

    /// <summary>Places to write down reports of one instant each, each later than all before it, and without a number of its own; then <see cref="NotePlain"/> has to be told of them. None where every report wants care.</summary>
    internal Span<ReportEntry> FreePlaces() => _ids is null ? _ring.PlacesFrom(_number + 1) : [];

    /// <summary>Notes reports that were written into the free places. None of them can be equal to another.</summary>
    internal void NotePlain(ReadOnlySpan<TagRead> reads)
    {
        Span<ReportEntry> places = FreePlaces();
        for (int i = 0; i < reads.Length; i++)
        {
            if (places[i].HasTail)
            {
                _ring.SetTail(_number + 1 + i, TailOf(reads[i]));
            }
        }

        _number += reads.Length;
        _latestTicks = reads[^1].LastTicks;
    }

    /// <summary>Whether an equal report is known; in any case the report is known from now on.</summary>
    internal bool Observe(int tag, in TagRead read)
    {
        bool isLater = read.LastTicks > _latestTicks;
        _latestTicks = isLater ? read.LastTicks : _latestTicks;
        _number++;
        bool repeat = _limit > 0 && (!isLater || read.HasReportId || _ids is not null) && ObserveWithCare(tag, read, isLater);
        _ring[_number] = new ReportEntry(tag, read);
        if (_ring[_number].HasTail)
        {
            _ring.SetTail(_number, TailOf(read));
        }

        return repeat;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private bool ObserveWithCare(int tag, in TagRead read, bool isLater)
    {
        while (_number >= _length && _length < _ring.Length)
        {
            Grow();
        }

        bool repeat = !isLater && _latestTicks - read.LastTicks <= _horizonTicks && IsContentKnown(tag, read);
        if (read.HasReportId || _ids is not null)
        {
            repeat |= ObserveId(tag, read);
        }

        return repeat;
    }

    private static ReportTail TailOf(in TagRead read) => new(read.LastTicks, read.CountOrZero);

    private bool IsContentKnown(int tag, in TagRead read)
    {
        LinkAllBefore(_number);
        var report = new ReportEntry(tag, read);
        ReportTail tail = report.HasTail ? TailOf(read) : default;
        for (long at = _byContent[HashOf(report, tail) & (_byContent.Length - 1)]; IsKept(at); at = _before[Place(at)])
        {
            if (_ring[at].Equals(report) && _ring.TailOf(at) == tail)
            {
                return true;
            }
        }

        return false;
    }

    // Puts the reports that were only noted into their chains, in order, and leaves out what the ring no longer keeps.
    private void LinkAllBefore(long number)
    {
        if (_before.Length != _length)
        {
            _before = new long[_length];
            _byContent = new long[_length];
            _linked = 0;
        }

        for (long at = Math.Max(_linked + 1, number - _length); at < number; at++)
        {
            Link(_byContent, _before, HashOf(_ring[at], _ring.TailOf(at)), at);
        }

        _linked = number - 1;
    }

    private bool ObserveId(int tag, in TagRead read)
    {
        if (_ids is null)
        {
            _ids = new long[_length];
            _idBefore = new long[_length];
            _byId = new long[_length];
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
            repeat = _ids[Place(at)] == id && _ring[at].Tag == tag && _latestTicks - LastTicksAt(at) <= _horizonTicks;
        }

        _ids[Place(_number)] = id;
        Link(_byId, _idBefore, HashOf(id), _number);
        return repeat;
    }

    private long LastTicksAt(long number) => _ring[number].HasTail ? _ring.TailOf(number).LastTicks : _ring[number].FirstTicks;

    private static long HashOf(in ReportEntry report, ReportTail tail) => (long)((report.ContentHash + tail.Hash) >> 32);

    private static long HashOf(long id) => (long)(((ulong)id * 0x9E3779B97F4A7C15UL) >> 32);

    private bool IsKept(long number) => number > 0 && _number - number <= _limit;

    private int Place(long number) => (int)number & (_length - 1);

    private void Link(long[] buckets, long[] before, long hash, long number)
    {
        ref long bucket = ref buckets[hash & (buckets.Length - 1)];
        before[Place(number)] = bucket;
        bucket = number;
    }

    // Nothing has been overwritten before there are as many places as the ring has, so every report keeps its place.
    private void Grow()
    {
        _length *= 2;
        if (_ids is null)
        {
            return;
        }

        long[] before = _idBefore;
        Array.Resize(ref _ids, _length);
        _idBefore = new long[_length];
        _byId = new long[_length];
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
