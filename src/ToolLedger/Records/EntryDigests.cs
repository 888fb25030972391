using System;
using System.Collections.Generic;
using System.Linq;

namespace ToolLedger.Records;

/// <summary>One digest for a set of facts, whatever their order.</summary>
internal static class EntryDigests
{
    private const int DigestByteCount = 32;

    internal static Digest Of(IReadOnlyCollection<RecordEntry> entries)
    {
        byte[] all = new byte[entries.Count * DigestByteCount];
        int index = 0;
        foreach (Digest digest in entries.Select(static entry => entry.Digest).OrderBy(static digest => digest.ToString(), StringComparer.Ordinal))
        {
            digest.TryWriteBytes(all.AsSpan(index));
            index += DigestByteCount;
        }

        return Digest.Of(all);
    }
}
