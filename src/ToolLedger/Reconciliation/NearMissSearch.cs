using System;
using System.Collections.Generic;
using System.Globalization;
using ToolLedger.Identifiers;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>
/// Notes unknown tags that differ from a live one in a single bit. A note for whoever looks for the cause of a silent tag; identifiers are never matched
/// approximately. The cost is bounded: so many tags a session, one look-up for each bit of each, and tags of up to 496 bits, as far as EPCs are decoded.
/// </summary>
internal static class NearMissSearch
{
    private const int MaxBitCount = 496;

    public static void Search(ReconciliationScope scope, ReadSession session, List<Finding> findings)
    {
        int limit = scope.Policy.Findings.NearMissTagsMax;
        int compared = 0;
        foreach (TagReading reading in limit == 0 ? [] : scope.ReadingOf(session).Tags)
        {
            if (reading is not { Kind: TagReadingKind.Unknown, Evidence: { LastSeen: { } at, Tag: { Kind: TagIdKind.Epc, Epc.BitCount: > 0 and <= MaxBitCount } tag } })
            {
                continue;
            }

            if (compared++ == limit)
            {
                findings.Add(new Finding(
                    FindingLevel.Session, new Reason(ReconciliationReasons.NearMissLimit, ("limit", limit.ToString(CultureInfo.InvariantCulture))))
                {
                    Session = session.Id,
                });
                return;
            }

            if (Neighbour(scope.Input.Tags, tag, at) is { } live)
            {
                findings.Add(new Finding(
                    FindingLevel.Session,
                    new Reason(ReconciliationReasons.NearMiss, ("tag", tag.ToString()), ("other", live.Tag.ToString()), ("tool", live.Tool.Value)))
                {
                    Session = session.Id,
                    Tags = [tag, live.Tag],
                });
            }
        }
    }

    /// <summary>The live binding of a tag one bit away, the first by the place of the bit; null if there is none.</summary>
    private static TagBinding? Neighbour(TagRegister register, TagId tag, DateTimeOffset at)
    {
        Span<byte> bits = stackalloc byte[MaxBitCount / 8];
        tag.Epc.TryWriteBytes(bits, out int length);
        for (int bit = 0; bit < tag.Epc.BitCount; bit++)
        {
            byte mask = (byte)(0x80 >> (bit & 7));
            bits[bit >> 3] ^= mask;
            TagBinding? live = register.FindLive(TagId.FromEpc(Epc.FromBytes(bits[..length], tag.Epc.BitCount)), at);
            if (live is not null)
            {
                return live;
            }

            bits[bit >> 3] ^= mask;
        }

        return null;
    }
}
