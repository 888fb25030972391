using System;
using System.Runtime.CompilerServices;
using System.Threading;

namespace ToolLedger.Reads;

/// <content>Reads of which nothing has to be asked any more.</content>
internal sealed partial class EvidenceStore
{
    /// <summary>
    /// Adds reads of one slot that wholly belongs to its pass, each of one instant that is later than every read before it, on an
    /// antenna below <see cref="PlainAntennas"/>. False, and nothing added, where they want more care.
    /// </summary>
    /// <param name="reads">What <see cref="TagTable.FindTogether"/> looked for.</param>
    /// <param name="start">The first of the reads to add.</param>
    /// <param name="count">How many to add.</param>
    /// <param name="found">What was found; after this the entry of each tag, -1 where the limit of tags leaves no room.</param>
    /// <param name="pass">The pass.</param>
    /// <param name="slot">The slot.</param>
    /// <param name="correction">Ticks to take from the reader's.</param>
    /// <param name="overLimit">How many found no room.</param>
    [MethodImpl(MethodImplOptions.NoInlining)]
    internal bool TryAddPlain(ReadOnlySpan<TagRead> reads, int start, int count, int[] found, int pass, int slot, long correction, out int overLimit)
    {
        overLimit = 0;
        Span<ulong> looks = _looks.FreePlaces(count);
        if (looks.IsEmpty)
        {
            return false;
        }

        PagedList<TagEntry> entries = _tags.Entries;
        long from = Origin + correction;
        int lookCount = 0;
        for (int i = start; i < start + count; i++)
        {
            ref readonly TagRead read = ref reads[i];
            int index = found[i];
            if (index < 0)
            {
                index = _tags.Confirm(in read.TagInPlace, index, i);
                found[i] = index;
                if (index < 0)
                {
                    overLimit++;
                    continue;
                }
            }

            ref TagEntry entry = ref entries[index];
            uint recent = Recent(read.AntennaNumber, slot);
            if (entry.Recent == recent)
            {
                entry.ExtendTo(read.FirstTicks - from);
            }
            else
            {
                entry.Include(read.FirstTicks - from);
                entry.Recent = recent;
                looks[lookCount++] = LookKey.Of(index, pass, read.AntennaNumber, slot);
            }

            if (TagTable.IsControl(entry))
            {
                AddControlSpan(index, read.AntennaNumber, read.FirstTicks - from);
            }

            AddDetails(ref entry, read);
            CountAccepted(ref entry);
        }

        if (lookCount > 0)
        {
            _looks.Take(lookCount);
            Volatile.Write(ref _index, null);
        }

        return true;
    }
}
