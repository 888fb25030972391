using System;

namespace ToolLedger.Reads;

/// <content>Many reads together: plain ones many at once, the others one by one, but looked up together.</content>
internal sealed partial class ReadPlacer
{
    /// <summary>Adds reads as if one by one; gives how many were accepted.</summary>
    internal int AddRange(ReadOnlySpan<TagRead> reads)
    {
        int accepted = 0;
        int care = 1;
        _readCount += reads.Length;
        while (!reads.IsEmpty)
        {
            int plain = TakePlain(reads);
            accepted += plain;
            reads = reads[plain..];
            care = plain > 0 ? 1 : care;
            if (plain == 0)
            {
                // One read that wants care is often alone, such as the first one in a slot; where others follow, more of them are looked up together.
                int length = Math.Min(care, reads.Length);
                accepted += PlaceWithCare(reads[..length]);
                reads = reads[length..];
                care = Math.Min(2 * care, TagTable.BatchLength);
            }
        }

        return accepted;
    }

    private int TakePlain(ReadOnlySpan<TagRead> reads)
    {
        var slot = new PlainSlot(_slotFrom + _correction, (ulong)(_slotTo - _slotFrom), _heard, _slot, _pass, _correction, _repeats.LatestTicks);
        if (!slot.IsPlain(in reads[0], slot.Latest))
        {
            return 0;
        }

        int count = _store.TakePlain(reads, in slot, _repeats.FreePlaces());
        if (count > 0)
        {
            _repeats.NotePlain(reads[..count]);
            _lastAccepted = reads[count - 1].FirstTicks - _correction;
        }

        return count;
    }

    private int PlaceWithCare(ReadOnlySpan<TagRead> reads)
    {
        int accepted = 0;
        _store.Tags.FindTogether(reads);
        for (int i = 0; i < reads.Length; i++)
        {
            int index = _store.Tags.Confirm(in reads[i].TagInPlace, i);
            accepted += PlaceWithCare(index, in reads[i]) == ReadPlacement.Accepted ? 1 : 0;
        }

        return accepted;
    }
}
