using System;
using System.Numerics;

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

    private readonly int _limit;
    private readonly int _fullLength;
    private readonly long _horizonTicks;
    private ReportEntry[] _ring = [];

    // By place in the ring, and by bucket: made when first needed.
    private long[] _before = [];
    private long[] _byContent = [];
    private long[]? _ids;
    private long[] _idBefore = [];
    private long[] _byId = [];
    private long _number;
    private long _linked;
    private long _firstWithId;
    private long _latestTicks = long.MinValue;

    internal RepeatWindow(SessionPolicy policy)
    {
        _limit = policy.RepeatReportCount;
        _fullLength = (int)BitOperations.RoundUpToPowerOf2((uint)_limit);
        _horizonTicks = policy.RepeatHorizon.Ticks;
    }

    /// <summary>Whether an equal report is known; in any case the report is known from now on.</summary>
    internal bool Observe(int tag, in TagRead read)
    {
        if (_limit == 0)
        {
            return false;
        }

        // Reports are numbered from 1: 0 in a bucket or chain means "none".
        _number++;
        if (_number >= _ring.Length && _ring.Length < _fullLength)
        {
            Grow();
        }

        // Later than everything before means different from everything before: reports mostly come in order of time.
        bool isLater = read.LastTicks > _latestTicks;
        _latestTicks = isLater ? read.LastTicks : _latestTicks;
        bool repeat = !isLater && _latestTicks - read.LastTicks <= _horizonTicks && IsContentKnown(new ReportEntry(tag, read));
        if (read.HasReportId || _ids is not null)
        {
            repeat |= ObserveId(read);
        }

        _ring[_number & (_ring.Length - 1)] = new ReportEntry(tag, read);
        return repeat;
    }

    private bool IsContentKnown(in ReportEntry report)
    {
        LinkAllBefore(_number);
        for (long at = _byContent[report.ContentHash & (_byContent.Length - 1)]; IsKept(at); at = _before[Place(at)])
        {
            if (_ring[Place(at)].HasSameContent(report))
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
            Link(_byContent, _before, _ring[Place(at)].ContentHash, at);
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
            repeat = _ids[Place(at)] == id && _latestTicks - _ring[Place(at)].LastTicks <= _horizonTicks;
        }

        _ids[Place(_number)] = id;
        Link(_byId, _idBefore, HashOf(id), _number);
        return repeat;
    }

    private const long NoId = -1;

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
