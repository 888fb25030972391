using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Identifiers;
using ToolLedger.Reads;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Reads;

/// <summary>Sessions of so many looks that they are sorted on the way, or that it is put off.</summary>
public sealed class ManyLooksTests
{
    // Where hardly any look comes twice, sorting them on the way is put off; nothing may be lost or counted twice by that.
    [Fact]
    public void Over_a_million_looks_of_which_few_come_twice_equal_a_plain_set()
    {
        var random = new Random(20261130);
        var scene = new SessionScene();
        var looks = new HashSet<int>();
        var builder = new ReadSessionBuilder(scene.Presentation, scene.Policy);
        var reads = new TagRead[1_200_000];
        for (int i = 0; i < reads.Length; i++)
        {
            int tag = random.Next(1_000_000);
            double second = 59.0 * i / reads.Length;
            looks.Add((tag * 256) + (int)(second / 0.5));
            reads[i] = SessionScene.Read(TagId.FromEpc(Epc.FromWords((ulong)tag << 16, 0, 96)), 1, second);
        }

        builder.AddRange(reads);
        builder.AddRange(reads);
        ReadSession session = builder.Close(SessionScene.At(60), TimeSpan.Zero);
        Assert.Equal(looks.Count, session.Tags.Sum(tag => tag.LookCount));
    }

    // A tag heard all the time makes a new look in every slot, of which few are kept: memory is that of those kept.
    [Fact]
    public void Memory_does_not_grow_with_looks_that_are_not_kept()
    {
        var policy = new SessionPolicy { LooksKept = 16, SlotLength = TimeSpan.FromMilliseconds(10), RepeatReportCount = 0, MaximumWindow = TimeSpan.FromHours(24) };
        var builder = new ReadSessionBuilder(new SessionScene { Policy = policy, Seconds = 80_000 }.Presentation, policy);
        TagId[] tags = [.. Enumerable.Range(0, 20).Select(SessionScene.Tool)];
        var reads = new TagRead[64];
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int at = 0; at < 6_000_000; at += reads.Length)
        {
            for (int i = 0; i < reads.Length; i++)
            {
                reads[i] = SessionScene.Read(tags[i % 20], 1 + (i & 1), 0.01 * (at + i));
            }

            builder.AddRange(reads);
        }

        // 8 bytes for each of 1,048,576 looks, in pieces, and once more as much to sort them.
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 40_000_000);
        Assert.Equal(20 * 16, builder.Close(SessionScene.At(70_000), TimeSpan.Zero).Tags.Sum(tag => tag.LookCount));
    }
}
