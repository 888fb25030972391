using System;
using System.Numerics;

namespace ToolLedger.Reads;

/// <summary>
/// Tells whether an equal report was delivered before: exactly, among the latest reports kept and inside the horizon of
/// report time. Reports lie in a ring; each bucket leads to its newest report, each report to the one before it in its
/// bucket, and a chain ends at the first report that the ring no longer keeps, so that nothing is ever removed.
/// </summary>
internal sealed class RepeatWindow
{
    private const int FirstLength = 256;

    private readonly int _limit;
    private readonly int _fullLength;
    private readonly long _horizonTicks;
    private ReportEntry[] _ring = [];
    private long[] _byContent = [];
    private long[]? _byReportId;
    private long _number;
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

        if (_byReportId is null && read.HasReportId)
        {
            _byReportId = new long[_ring.Length];
        }

        var report = new ReportEntry(tag, read);

        // Later than everything before means different from everything before: reports mostly come in order of time.
        bool isLater = read.LastTicks > _latestTicks;
        _latestTicks = isLater ? read.LastTicks : _latestTicks;
        long hash = report.ContentHash;
        bool repeat = (!isLater && _latestTicks - read.LastTicks <= _horizonTicks && HasSameContent(report, hash))
            || (read.HasReportId && HasSameId(report));
        ref ReportEntry kept = ref At(_number);
        kept = report;
        Link(ref kept, hash, _number);
        return repeat;
    }

    private bool HasSameContent(in ReportEntry report, long hash)
    {
        for (long at = _byContent[hash & (_byContent.Length - 1)]; IsKept(at); at = At(at).ContentBefore)
        {
            if (At(at).HasSameContent(report))
            {
                return true;
            }
        }

        return false;
    }

    private bool HasSameId(in ReportEntry report)
    {
        for (long at = _byReportId![report.IdHash & (_byReportId.Length - 1)]; IsKept(at); at = At(at).IdBefore)
        {
            if (At(at).HasSameId(report) && _latestTicks - At(at).LastTicks <= _horizonTicks)
            {
                return true;
            }
        }

        return false;
    }

    private bool IsKept(long number) => number > 0 && _number - number <= _limit;

    private ref ReportEntry At(long number) => ref _ring[number & (_ring.Length - 1)];

    private void Link(ref ReportEntry report, long hash, long number)
    {
        ref long content = ref _byContent[hash & (_byContent.Length - 1)];
        report.ContentBefore = content;
        content = number;
        if (_byReportId is not null && report.HasId)
        {
            ref long id = ref _byReportId[report.IdHash & (_byReportId.Length - 1)];
            report.IdBefore = id;
            id = number;
        }
    }

    // Nothing has been overwritten before the ring has its full length, so every report can be linked anew.
    private void Grow()
    {
        ReportEntry[] old = _ring;
        int length = Math.Min(Math.Max(FirstLength, old.Length * 2), _fullLength);
        _ring = new ReportEntry[length];
        _byContent = new long[length];
        _byReportId = _byReportId is null ? null : new long[length];
        for (long number = 1; number < _number && number < old.Length; number++)
        {
            At(number) = old[number];
            Link(ref At(number), old[number].ContentHash, number);
        }
    }
}
