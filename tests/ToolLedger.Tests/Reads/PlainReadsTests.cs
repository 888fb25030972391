using System;
using System.Linq;
using FsCheck.Xunit;
using ToolLedger.Identifiers;
using ToolLedger.Reads;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Reads;

/// <summary>Reads in order of time take a short way. It keeps recent tags apart from their entries, and many tags drive each other out; what is known in the end must be the same.</summary>
public sealed class PlainReadsTests
{
    private static readonly Tid[] Chips = [Tid.Parse("E2801102"), Tid.Parse("E2801103"), Tid.Parse("E2801104")];

    /// <summary>Some to thousands of tags, a TID now and then, late reads, equal instants, passes: one by one, in pieces, and shuffled.</summary>
    [Property(MaxTest = 200)]
    public void Reads_in_pieces_of_any_length_leave_what_they_leave_one_by_one(int seed)
    {
        var random = new Random(seed);
        TagRead[] reads = Draw(random);
        ReadSessionBuilder each = Builder();
        ReadSessionBuilder pieces = Builder();
        ReadSessionBuilder shuffled = Builder();
        int accepted = reads.Count(read => each.Add(read) == ReadPlacement.Accepted);
        int inPieces = 0;
        for (int at = 0; at < reads.Length;)
        {
            int length = Math.Min(1 + random.Next(random.Next(2) == 0 ? 5 : 700), reads.Length - at);
            inPieces += pieces.AddRange(reads.AsSpan(at, length));
            at += length;
        }

        TagRead[] anyOrder = [.. reads];
        random.Shuffle(anyOrder);
        shuffled.AddRange(anyOrder);

        Assert.Equal(accepted, inPieces);
        ReadSession one = Close(each);
        Assert.Equal(EvidenceText.Of(one), EvidenceText.Of(Close(pieces)));
        Assert.Equal(one.Digest, Close(shuffled).Digest);
    }

    // Some that have one place among the recent tags: each drives the others out.
    private static readonly TagId[] OfOnePlace = [.. Enumerable.Range(0, 20_000).Select(Tag).Where(static tag =>
        tag.TryGetShort(out ulong first, out ulong second, out _) && RecentTag.PlaceOf(first, second) == 17).Take(5)];

    private static TagRead[] Draw(Random random)
    {
        TagId[] tags = random.Next(3) switch { 0 => OfOnePlace, 1 => [.. Enumerable.Range(0, 60).Select(Tag)], _ => [.. Enumerable.Range(0, 3_000).Select(Tag)] };
        long ticks = SessionScene.Start.Ticks;
        var reads = new TagRead[random.Next(tags == OfOnePlace ? 100 : 3_000)];
        for (int i = 0; i < reads.Length; i++)
        {
            ticks += random.Next(50) switch { 0 => -random.Next(30_000_000), 1 => 0, _ => 1 + random.Next(200_000) };
            reads[i] = new TagRead(tags[random.Next(tags.Length)], new AntennaPort((byte)(1 + random.Next(2))), new DateTimeOffset(ticks, TimeSpan.Zero))
            {
                Tid = random.Next(6) == 0 ? Chips[random.Next(Chips.Length)] : default,
                Strength = new Rssi((short)-random.Next(3_000, 7_000)),
                Count = random.Next(4) == 0 ? 1 + random.Next(3) : null,
            };
        }

        return reads;
    }

    private static TagId Tag(int number) => TagId.FromEpc(Epc.Parse(FormattableString.Invariant($"3034257BF7194E40{number:X8}")));

    private static ReadSessionBuilder Builder() => new(
        new SessionScene { PassStarts = [20] }.Presentation, new SessionPolicy { RepeatReportCount = 1_000, SlotLength = TimeSpan.FromSeconds(0.7) });

    private static ReadSession Close(ReadSessionBuilder builder) => builder.Close(SessionScene.At(60), TimeSpan.Zero);
}
