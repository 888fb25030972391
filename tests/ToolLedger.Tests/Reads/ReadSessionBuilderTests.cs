using System;
using System.Collections.Generic;
using System.Linq;
using FsCheck.Xunit;
using ToolLedger.Identifiers;
using ToolLedger.Reads;
using ToolLedger.Testing.Generators;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Reads;

/// <summary>Evidence is a set: order, repeats and the number of reads do not matter.</summary>
[Properties(Arbitrary = [typeof(AnyTagRead), typeof(AnyPresentation)], MaxTest = 200)]
public sealed class ReadSessionBuilderTests
{
    private static readonly SessionPolicy FewLooks = new() { LooksKept = 3 };

    private static ReadSession Close(Presentation presentation, IEnumerable<TagRead> reads, SessionPolicy? policy = null)
    {
        var builder = new ReadSessionBuilder(presentation, policy ?? new SessionPolicy());
        foreach (TagRead read in reads)
        {
            builder.Add(read);
        }

        return builder.Close(AnyTagRead.Start.AddSeconds(60), TimeSpan.Zero);
    }

    // A read after the end speaks against a session, so taking it away may help; these properties are about the others.
    private static TagRead[] BeforeTheEnd(TagRead[] reads) =>
        [.. reads.Where(read => read.LastSeen < AnyTagRead.Start.AddSeconds(57))];

    // Property 3 of the trade (order and repetition), with and without saturation.
    [Property]
    public void Shuffled_reads_give_the_same_evidence_health_and_digest(Presentation presentation, TagRead[] reads, int seed, bool saturates)
    {
        SessionPolicy policy = saturates ? FewLooks : new SessionPolicy();
        ReadSession ordered = Close(presentation, reads, policy);
        TagRead[] shuffled = [.. reads];
        new Random(seed).Shuffle(shuffled);
        ReadSession other = Close(presentation, shuffled, policy);
        Assert.Equal(EvidenceText.Of(ordered), EvidenceText.Of(other));
        Assert.Equal(ordered.Digest, other.Digest);
    }

    [Property]
    public void Delivering_any_reads_twice_changes_the_repeat_count_only(Presentation presentation, TagRead[] reads, int seed)
    {
        TagRead[] again = [.. reads, .. reads.Where((_, index) => ((seed >> (index % 31)) & 1) == 0)];
        var policy = new SessionPolicy { RepeatHorizon = TimeSpan.FromMinutes(10) };
        ReadSession once = Close(presentation, reads, policy);
        ReadSession twice = Close(presentation, again, policy);
        Assert.Equal(EvidenceText.Of(once), EvidenceText.Of(twice));
        Assert.Equal(once.Digest, twice.Digest);
        Assert.Equal(once.AcceptedCount, twice.AcceptedCount);
        Assert.Equal(again.Length - reads.Length, twice.RepeatCount - once.RepeatCount);
    }

    // Property 5 of the trade (doubt is monotone): a session without some reads is never healthier, and no tag has more looks.
    [Property]
    public void Removing_reads_never_raises_health_or_evidence(Presentation presentation, TagRead[] any, int seed)
    {
        TagRead[] reads = BeforeTheEnd(any);
        ReadSession all = Close(presentation, reads);
        ReadSession some = Close(presentation, reads.Where((_, index) => ((seed >> (index % 31)) & 1) == 0));
        Assert.True(some.Health.State <= all.Health.State);
        Assert.Subset(all.LiveAntennas.ToHashSet(), some.LiveAntennas.ToHashSet());
        foreach (TagEvidence tag in some.Tags)
        {
            TagEvidence whole = all.Find(tag.Tag)!;
            Assert.True(tag.LookCount <= whole.LookCount && tag.PassCount <= whole.PassCount && tag.AntennaCount <= whole.AntennaCount);
        }
    }

    [Property]
    public void A_dead_antenna_never_raises_health(Presentation presentation, TagRead[] any, byte antenna)
    {
        TagRead[] reads = BeforeTheEnd(any);
        var port = new AntennaPort((byte)(1 + (antenna % 4)));
        ReadSession alive = Close(presentation, reads);
        ReadSession dead = Close(presentation, reads.Where(read => read.Antenna != port));
        var builder = new ReadSessionBuilder(presentation, new SessionPolicy());
        foreach (TagRead read in reads)
        {
            builder.Add(read);
        }

        builder.ReportLoss(SessionLoss.AntennaDisconnected, AnyTagRead.Start.AddSeconds(1), port);
        ReadSession reported = builder.Close(AnyTagRead.Start.AddSeconds(60), TimeSpan.Zero);
        Assert.True(dead.Health.State <= alive.Health.State);
        Assert.True(reported.Health.State <= alive.Health.State);
        Assert.DoesNotContain(port, reported.LiveAntennas);
    }

    // The model: a plain set of (pass, antenna, slot) for each tag, cut to the earliest ones.
    [Property]
    public void Evidence_equals_a_plain_set_of_looks(Presentation presentation, TagRead[] reads, bool saturates)
    {
        SessionPolicy policy = saturates ? FewLooks : new SessionPolicy();
        ReadSession session = Close(presentation, reads, policy);
        Dictionary<TagId, EvidenceModel> model = EvidenceModel.Of(presentation, reads, policy);
        foreach (TagId tag in AnyTagRead.Tags)
        {
            string expected = model.TryGetValue(tag, out EvidenceModel? looks) ? looks.ToText(policy.LooksKept) : "";
            TagEvidence? found = session.Find(tag);
            Assert.Equal(expected, found is null || found.LookCount == 0 ? "" : EvidenceModel.TextOf(found));
        }

        Assert.Equal(reads.Length, session.ReadCount);
        Assert.Equal(reads.Length, session.AcceptedCount + session.RepeatCount + session.OutsideCount + session.OverLimitCount);
        Assert.Equal(session.AcceptedCount, session.Tags.Sum(tag => tag.AcceptedCount));
        Assert.Equal(session.OutsideCount, session.Tags.Sum(tag => tag.OutsideCount));
        Assert.Equal(session.RepeatCount, session.Tags.Sum(tag => tag.RepeatCount));
    }

    // Adding a read for one tag changes no other tag's evidence (property 4 of the trade, at this level).
    [Property]
    public void A_read_changes_the_evidence_of_its_own_tag_only(Presentation presentation, TagRead[] reads, TagRead one)
    {
        ReadSession before = Close(presentation, reads);
        ReadSession after = Close(presentation, [.. reads, one]);
        foreach (TagEvidence tag in before.Tags.Where(tag => tag.Tag != one.Tag))
        {
            Assert.Equal(EvidenceText.Of(tag), EvidenceText.Of(after.Find(tag.Tag)!));
        }
    }

    [Fact]
    public void Memory_does_not_grow_with_the_number_of_reads()
    {
        TagId[] tags = [.. Enumerable.Range(0, 20).Select(SessionScene.Tool)];

        // The same twenty tags all the time; after the first fifth, in which time also runs back once, every look and every
        // repeat entry has its place.
        var policy = new SessionPolicy { RepeatReportCount = 1_024, LooksKept = 16 };
        var scene = new SessionScene { Policy = policy };
        var builder = new ReadSessionBuilder(scene.Presentation, policy);
        Add(builder, 100_000);
        Add(builder, 100_000);
        long before = GC.GetAllocatedBytesForCurrentThread();
        Add(builder, 1_000_000);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);

        void Add(ReadSessionBuilder target, int count)
        {
            for (int i = 0; i < count; i++)
            {
                target.Add(SessionScene.Read(tags[i % 20], 1 + (i & 1), i * 59.0 / count));
            }
        }
    }

    // Looking many tags up together is the same as looking up each.
    [Property]
    public void Adding_a_range_gives_what_adding_each_gives(Presentation presentation, TagRead[] reads, byte times)
    {
        TagRead[] many = [.. Enumerable.Repeat(reads, 1 + (times % 20)).SelectMany(part => part)];
        var each = new ReadSessionBuilder(presentation, FewLooks);
        int accepted = many.Count(read => each.Add(read) == ReadPlacement.Accepted);
        var range = new ReadSessionBuilder(presentation, FewLooks);

        Assert.Equal(accepted, range.AddRange(many));
        DateTimeOffset to = presentation.Until ?? presentation.From + TimeSpan.FromMinutes(1);
        ReadSession one = each.Close(to);
        ReadSession other = range.Close(to);
        Assert.Equal(EvidenceText.Of(one), EvidenceText.Of(other));
        Assert.Equal(one.Digest, other.Digest);
    }

    // Reads in order of time, as readers give them, with now and then one that is not: those in order are taken in a quicker way.
    [Property]
    public void Adding_a_range_in_order_gives_what_adding_each_gives(Presentation presentation, TagRead[] kinds, int seed, bool isNarrow, bool seesRepeats)
    {
        var random = new Random(seed);
        TagId[] tags = [.. AnyTagRead.Tags, TagId.FromEpc(Epc.Parse("3674257BF7194E4000001A85" + new string('5', 28))), SessionScene.C1];
        long ticks = presentation.From.Ticks;
        TagRead[] reads = [.. kinds.SelectMany(kind => Enumerable.Range(0, 40).Select(_ =>
        {
            ticks += random.Next(30) == 0 ? -random.Next(20_000_000) : 1 + random.Next(100_000);
            var at = new DateTimeOffset(Math.Max(0, ticks), TimeSpan.Zero);
            return random.Next(10) == 0 ? kind : new TagRead(tags[random.Next(tags.Length)], new AntennaPort((byte)(1 + random.Next(2))), at)
            {
                Strength = random.Next(3) == 0 ? null : new Rssi((short)-random.Next(3_000, 7_000)),
                Count = random.Next(8) == 0 ? 2 : null,
            };
        }))];
        var policy = new SessionPolicy { LooksKept = 5, TagLimit = isNarrow ? 3 : 1_000, RepeatReportCount = seesRepeats ? 300 : 0 };
        var each = new ReadSessionBuilder(presentation, policy);
        var range = new ReadSessionBuilder(presentation, policy);

        Assert.Equal(reads.Count(read => each.Add(read) == ReadPlacement.Accepted), range.AddRange(reads));
        DateTimeOffset to = presentation.Until ?? presentation.From + TimeSpan.FromMinutes(1);
        ReadSession one = each.Close(to);
        ReadSession other = range.Close(to);
        Assert.Equal(EvidenceText.Of(one), EvidenceText.Of(other));
        Assert.Equal((one.AcceptedCount, one.RepeatCount, one.OutsideCount, one.OverLimitCount), (other.AcceptedCount, other.RepeatCount, other.OutsideCount, other.OverLimitCount));
        Assert.Equal(one.Digest, other.Digest);
    }

    // So many reads that looks are sorted and made different on the way, in the order of the draw and the other way round.
    [Theory]
    [InlineData(128)]
    [InlineData(5)]
    public void Many_looks_in_any_order_equal_a_plain_set(int looksKept)
    {
        var scene = new SessionScene { Policy = new SessionPolicy { LooksKept = looksKept, SlotLength = TimeSpan.FromSeconds(0.1) } };
        var random = new Random(20261125);
        var reads = new TagRead[250_000];
        for (int i = 0; i < reads.Length; i++)
        {
            reads[i] = SessionScene.Read(SessionScene.Tool(1 + random.Next(300)), 1 + random.Next(2), random.Next(590_000) / 10_000.0);
        }

        Dictionary<TagId, EvidenceModel> models = EvidenceModel.Of(scene.Presentation, reads, scene.Policy);
        for (int turn = 0; turn < 2; turn++)
        {
            var builder = new ReadSessionBuilder(scene.Presentation, scene.Policy);
            builder.AddRange(reads);
            ReadSession session = builder.Close(SessionScene.At(60), TimeSpan.Zero);
            Assert.Equal(models.Count, session.TagCount);
            Assert.All(session.Tags, tag => Assert.Equal(models[tag.Tag].ToText(looksKept), EvidenceModel.TextOf(tag)));
            Array.Reverse(reads);
        }
    }

    [Fact]
    public void A_pass_announced_late_takes_over_its_looks_by_whole_slots()
    {
        var scene = new SessionScene();
        var builder = new ReadSessionBuilder(scene.Presentation, scene.Policy);
        foreach (double second in (double[])[5, 19.9, 20.1, 20.6, 30])
        {
            builder.Add(SessionScene.Read(SessionScene.Tool(1), 1, second));
        }

        builder.Add(SessionScene.Read(SessionScene.Tool(2), 1, 40));
        builder.BeginPass(SessionScene.At(20));
        builder.Add(SessionScene.Read(SessionScene.Tool(1), 1, 31));
        ReadSession session = builder.Close(SessionScene.At(60), TimeSpan.Zero);
        TagEvidence first = session.Find(SessionScene.Tool(1))!;
        Assert.Equal([new LookCell(1, new AntennaPort(1), 2, false), new LookCell(2, new AntennaPort(1), 4, false)], first.Cells);
        Assert.Equal(SessionScene.At(5), first.FirstSeen);
        Assert.Equal(SessionScene.At(31), first.LastSeen);
        Assert.Equal([new LookCell(2, new AntennaPort(1), 1, false)], session.Find(SessionScene.Tool(2))!.Cells);
        Assert.Equal([(1, 80L), (2, 160L)], session.Passes.Select(pass => (pass.Number, pass.LookLimit)));
    }

    // In doubt on which side of the start a read lay, it makes no second pass: never more passes or looks than by the start known in time.
    [Property]
    public void A_start_given_late_gives_no_tag_more_than_the_same_start_given_up_front(int seed)
    {
        var random = new Random(seed);
        double[] starts = [.. Enumerable.Range(0, random.Next(1, 5)).Select(_ => random.Next(1, 200) / 10.0).Distinct().Order()];
        TagRead[] reads = [.. Enumerable.Range(0, random.Next(60)).Select(_ =>
            SessionScene.Read(SessionScene.Tool(random.Next(6)), random.Next(1, 3), random.Next(250) / 10.0))];
        ReadSession upFront = With(isKnown: true, 0);
        ReadSession late = With(isKnown: false, random.Next(reads.Length + 1));
        foreach (TagEvidence tag in late.Tags)
        {
            TagEvidence known = upFront.Find(tag.Tag)!;
            Assert.True(tag.LookCount <= known.LookCount && tag.PassCount <= known.PassCount && tag.AntennaCount <= known.AntennaCount);
            Assert.True(tag.LookCount > 0);
        }

        ReadSession With(bool isKnown, int before)
        {
            SessionScene scene = new() { PassStarts = isKnown ? starts : [] };
            var builder = new ReadSessionBuilder(scene.Presentation, scene.Policy);
            builder.AddRange(reads.AsSpan(0, before));
            foreach (double start in isKnown ? [] : starts)
            {
                builder.BeginPass(SessionScene.At(start));
            }

            builder.AddRange(reads.AsSpan(before));
            return builder.Close(SessionScene.At(60), TimeSpan.Zero);
        }
    }

    [Fact]
    public void A_look_in_the_slot_of_a_start_given_late_adds_no_pass()
    {
        SessionScene scene = new();
        var builder = new ReadSessionBuilder(scene.Presentation, scene.Policy);
        builder.Add(SessionScene.Read(SessionScene.Tool(1), 1, 10.3));
        builder.Add(SessionScene.Read(SessionScene.Tool(1), 1, 11.6));
        builder.Add(SessionScene.Read(SessionScene.Tool(2), 1, 10.3));
        builder.BeginPass(SessionScene.At(10.2));
        ReadSession session = builder.Close(SessionScene.At(60), TimeSpan.Zero);
        Assert.Equal([new LookCell(2, new AntennaPort(1), 1, false)], session.Find(SessionScene.Tool(1))!.Cells);
        Assert.Equal(1, session.Find(SessionScene.Tool(2))!.LookCount);
    }

    [Fact]
    public void Over_a_limit_of_tags_or_looks_the_session_is_invalid()
    {
        SessionScene tags = new SessionScene { Policy = new SessionPolicy { TagLimit = 2 } }
            .WithControls().With(SessionScene.Tool(1), 1, 3).With(SessionScene.Tool(2), 1, 4, 5);
        ReadSession tooManyTags = tags.Close();
        Assert.Equal(2, tooManyTags.OverLimitCount);
        Assert.Equal(2, tooManyTags.TagCount);
        Assert.Equal(SessionState.Invalid, tooManyTags.Health.State);
        Assert.Contains(tooManyTags.Health.Reasons, reason => reason.Kind == SessionReasons.TagLimit);

        SessionScene looks = new SessionScene { Policy = new SessionPolicy { LookLimit = 118 } }.WithControls().With(SessionScene.Tool(1), 1, 3);
        ReadSession tooManyLooks = looks.Close();
        Assert.Equal(1, tooManyLooks.Find(SessionScene.Tool(1))!.LookCount);
        Assert.Equal(SessionState.Invalid, tooManyLooks.Health.State);
        Assert.Contains(tooManyLooks.Health.Reasons, reason => reason.Kind == SessionReasons.LookLimit);
    }

    [Fact]
    public void The_window_includes_its_start_and_excludes_its_end()
    {
        var presentation = new Presentation
        {
            Id = new SessionId("S1"),
            Station = SessionScene.R1,
            Kits = [],
            From = SessionScene.Start,
            Until = SessionScene.At(60),
        };
        var builder = new ReadSessionBuilder(presentation, new SessionPolicy());
        TagId tag = SessionScene.Tool(1);
        var tick = TimeSpan.FromTicks(1);
        Assert.Equal(ReadPlacement.OutsideWindow, builder.Add(new TagRead(tag, new AntennaPort(1), SessionScene.Start - tick)));
        Assert.Equal(ReadPlacement.Accepted, builder.Add(new TagRead(tag, new AntennaPort(1), SessionScene.Start)));
        Assert.Equal(ReadPlacement.Accepted, builder.Add(new TagRead(tag, new AntennaPort(1), SessionScene.At(60) - tick)));
        Assert.Equal(ReadPlacement.OutsideWindow, builder.Add(new TagRead(tag, new AntennaPort(1), SessionScene.At(60))));
        Assert.Equal(ReadPlacement.OutsideWindow, builder.Add(new TagRead(tag, new AntennaPort(3), SessionScene.At(30))));

        // A report that begins before the window and ends in it has one look.
        Assert.Equal(ReadPlacement.Accepted, builder.Add(new TagRead(tag, new AntennaPort(2), SessionScene.At(-1)) { LastSeen = SessionScene.At(9) }));
        TagEvidence evidence = builder.Close(SessionScene.At(60), null).Find(tag)!;
        Assert.Equal((3, 3L, 3L), (evidence.LookCount, evidence.AcceptedCount, evidence.OutsideCount));
    }

    [Fact]
    public void A_closed_builder_takes_nothing_more()
    {
        var scene = new SessionScene();
        var builder = new ReadSessionBuilder(scene.Presentation, scene.Policy);
        Assert.Throws<ArgumentOutOfRangeException>(() => builder.Close(SessionScene.Start, null));
        Assert.Throws<ArgumentOutOfRangeException>(() => builder.BeginPass(SessionScene.Start));
        Assert.Throws<ArgumentOutOfRangeException>(() => builder.Close(SessionScene.At(86_401), null));
        builder.Close(SessionScene.At(60), null);
        Assert.Throws<InvalidOperationException>(() => builder.Add(SessionScene.Read(SessionScene.Tool(1), 1, 1)));
        Assert.Throws<InvalidOperationException>(() => builder.BeginPass(SessionScene.At(3)));
        Assert.Throws<InvalidOperationException>(() => builder.ReportLoss(SessionLoss.ReaderFault, SessionScene.At(3)));
        Assert.Throws<InvalidOperationException>(() => builder.Close(SessionScene.At(61), null));
    }

    [Fact]
    public void Only_the_two_smallest_tids_are_kept_and_more_are_said_to_be_there()
    {
        foreach (string[] order in (string[][])[["E1", "E2", "E3", "E2"], ["E3", "E1", "E2", "E1"], ["E2", "E3", "E1", "E3"]])
        {
            var scene = new SessionScene();
            scene.Reads.AddRange(order.Select((tid, i) => SessionScene.Read(SessionScene.Tool(1), 1, i) with { Tid = Tid.Parse(tid) }));
            TagEvidence evidence = scene.Close().Find(SessionScene.Tool(1))!;
            Assert.Equal([Tid.Parse("E1"), Tid.Parse("E2")], evidence.Tids);
            Assert.True(evidence.HasMoreTids);
        }
    }
}
