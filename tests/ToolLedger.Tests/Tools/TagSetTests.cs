using System;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ToolLedger.Identifiers;
using ToolLedger.Testing.Generators;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Tools;

[Properties(Arbitrary = [typeof(AnyTag)])]
public sealed class TagSetTests
{
    // Tags of every kind and length: the same answer as a plain list.
    [Property]
    public void A_tag_is_found_where_a_plain_list_finds_it(TagId[] tags, TagId[] asked)
    {
        var set = new TagSet(tags);
        TagId[] distinct = [.. tags.Distinct()];
        Assert.Equal(distinct, set.Tags);
        Assert.Equal(distinct.Length, set.Count);
        Assert.All(tags.Concat(asked), tag => Assert.Equal(Array.IndexOf(distinct, tag), set.IndexOf(tag)));
    }

    [Property]
    public void Comparing_equals_two_plain_sets(TagId[] tags, TagId[] others, int seed)
    {
        var set = new TagSet(tags);
        TagId[] heard = [.. tags.Where((_, i) => ((seed >> (i % 31)) & 1) == 0), .. others];
        var wasHeard = new bool[set.Count];
        int count = set.Compare(heard, wasHeard, out int otherCount);
        var plain = heard.ToHashSet();
        Assert.Equal(set.Tags.Select(plain.Contains), wasHeard);
        Assert.Equal(wasHeard.Count(was => was), count);
        Assert.Equal(heard.Count(tag => !tags.Contains(tag)), otherCount);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(20)]
    [InlineData(1_000)]
    [InlineData(TagSet.MaxCount)]
    public void Sets_of_any_allowed_size_hold_their_tags_and_no_other(int count)
    {
        TagId[] tags = [.. Enumerable.Range(0, count + 1).Select(Tag)];
        var set = new TagSet(tags.Take(count));
        Assert.All(Enumerable.Range(0, count), i => Assert.Equal(i, set.IndexOf(tags[i])));
        Assert.Equal(-1, set.IndexOf(tags[count]));
    }

    [Fact]
    public void Comparing_allocates_nothing()
    {
        TagId[] tags = [.. Enumerable.Range(0, 20).Select(Tag)];
        var set = new TagSet(tags);
        var wasHeard = new bool[20];
        set.Compare(tags, wasHeard, out _);
        long before = GC.GetAllocatedBytesForCurrentThread();
        set.Compare(tags, wasHeard, out _);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }

    [Fact]
    public void Too_many_tags_and_too_little_room_are_refused()
    {
        Assert.Throws<ArgumentException>(() => new TagSet(Endless()));
        Assert.Throws<ArgumentException>(() => new TagSet([Tag(1), Tag(2)]).Compare([], new bool[1], out _));
    }

    private static IEnumerable<TagId> Endless()
    {
        for (int i = 0; ; i++)
        {
            yield return Tag(i);
        }
    }

    // The first word is a constant of the arrangement, the second a plain number: they must not all want one place.
    [Theory]
    [InlineData("FF51AFD7ED558CCD")]
    [InlineData("C4CEB9FE1A85EC53")]
    [InlineData("9E3779B97F4A7C15")]
    [InlineData("0000000000000000")]
    public void Tags_chosen_against_the_arrangement_still_find_places_near_their_own(string first)
    {
        var set = new TagSet(Enumerable.Range(0, TagSet.MaxCount).Select(i => TagId.FromEpc(Epc.Parse($"{first}{i:X8}"))));
        Assert.Equal(TagSet.MaxCount, set.Count);

        // What it cost to place them, which nobody needs to know outside.
        var steps = (int)typeof(TagSet).GetProperty("StepCount", BindingFlags.Instance | BindingFlags.NonPublic)!.GetValue(set)!;
        Assert.InRange(steps, 0, TagSet.MaxCount);
    }

    // The first word is one for all, and the second the inverse of the last factor times a small number: under that factor all of them want one place. Tried for the factor of every seed.
    [Theory]
    [InlineData(1)]
    [InlineData(TagSet.SeedCount)]
    public void Tags_chosen_by_their_second_word_against_every_seed_still_find_places_near_their_own(int seedCount)
    {
        ulong[] inverses = [.. Enumerable.Range(0, seedCount).Select(seed => InverseOf(TagSet.FactorOf(TagSet.SeedOf(seed))))];
        var set = new TagSet(Enumerable.Range(0, TagSet.MaxCount).Select(i => TagId.FromEpc(Epc.Parse($"{0UL:X16}{inverses[i % seedCount] * (ulong)(i / seedCount):X16}"))));

        Assert.InRange(set.Count, TagSet.MaxCount - seedCount, TagSet.MaxCount);
        Assert.InRange(set.StepCount, 0, 4 * TagSet.MaxCount);
    }

    /// <summary>By Newton's rule: each step doubles the bits that are right, of which an odd number has three at first.</summary>
    private static ulong InverseOf(ulong odd)
    {
        ulong inverse = odd;
        for (int i = 0; i < 5; i++)
        {
            inverse *= 2 - (odd * inverse);
        }

        return odd * inverse == 1 ? inverse : throw new InvalidOperationException("Not odd.");
    }

    private static TagId Tag(int number) => TagId.FromEpc(Epc.Parse($"3414257BF4000000{number:X8}"));
}
