using System;
using System.Runtime.CompilerServices;

namespace ToolLedger.Reads;

/// <content>Many reads together: the hottest code of the library. What most reads share is tested first, in short loops of its own.</content>
internal sealed partial class ReadPlacer
{
    /// <summary>Adds reads as if one by one; gives how many were accepted.</summary>
    internal int AddRange(ReadOnlySpan<TagRead> reads)
    {
        int accepted = 0;
        _readCount += reads.Length;
        while (!reads.IsEmpty)
        {
            ReadOnlySpan<TagRead> batch = reads[..Math.Min(reads.Length, TagTable.BatchLength)];
            _store.Tags.FindTogether(reads, _found.AsSpan(0, batch.Length));
            accepted += PlaceTogether(batch);
            reads = reads[batch.Length..];
        }

        return accepted;
    }

    private int PlaceTogether(ReadOnlySpan<TagRead> reads)
    {
        int accepted = 0;
        int at = 0;
        while (at < reads.Length)
        {
            int plain = PlainLength(reads[at..]);
            if (plain > 0 && _store.TryAddPlain(reads, at, plain, _found, _pass, _slot, _correction, out int overLimit))
            {
                NotePlain(reads.Slice(at, plain), _found.AsSpan(at, plain), overLimit);
                accepted += plain - overLimit;
                at += plain;
                continue;
            }

            int index = _store.Tags.Confirm(in reads[at].TagInPlace, _found[at], at);
            accepted += PlaceWithCare(index, in reads[at]) == ReadPlacement.Accepted ? 1 : 0;
            at++;
        }

        return accepted;
    }

    // How many reads from the first on are plain: of one instant, later than the one before, in the same slot, on an antenna that was
    // heard in it, without a number of their own. Such a read is no repeat and inside the session.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private int PlainLength(ReadOnlySpan<TagRead> reads)
    {
        long latest = _repeats.LatestTicks;
        long from = _slotFrom + _correction;
        ulong length = (ulong)(_slotTo - _slotFrom);
        ulong heard = _heard;
        int limit = (int)Math.Min(reads.Length, _repeats.PlainRoom);
        int count = 0;
        while (count < limit)
        {
            ref readonly TagRead read = ref reads[count];
            long ticks = read.FirstTicks;
            byte antenna = read.AntennaNumber;
            if (ticks <= latest || read.LastTicks != ticks || (ulong)(ticks - from) >= length
                || antenna >= EvidenceStore.PlainAntennas || ((heard >> antenna) & 1) == 0 || read.HasReportId)
            {
                break;
            }

            latest = ticks;
            count++;
        }

        return count;
    }

    private void NotePlain(ReadOnlySpan<TagRead> reads, ReadOnlySpan<int> found, int overLimit)
    {
        _repeats.NotePlain(reads, found);
        int last = overLimit == 0 ? reads.Length - 1 : found.LastIndexOfAnyExcept(-1);
        for (; overLimit > 0; overLimit--)
        {
            OverLimit();
        }

        if (last >= 0)
        {
            _lastAccepted = reads[last].FirstTicks - _correction;
        }
    }
}
