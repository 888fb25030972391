using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Presence;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Generators;

/// <summary>Registers of tag histories that are accepted: up to 8 tags, with and without strengths, up to the limits of their counts.</summary>
public static class AnyTagHistoryRegister
{
    private static Gen<int> Count { get; } = Gen.Frequency((4, Gen.Choose(0, 60)), (1, Gen.Choose(0, TagHistoryEntry.MaxSessionCount)));

    /// <summary>Generates registers.</summary>
    public static Gen<TagHistoryRegister> Generator { get; } =
        from asOf in AnyTime.Generator
        from count in Gen.Choose(0, 8)
        from tags in AnyTag.Generator.ArrayOf(count)
        from entries in Gen.CollectToArray(tags.Distinct(), Entry)
        select new TagHistoryRegister(asOf, entries);

    /// <summary>The registers as FsCheck wants them.</summary>
    /// <returns>Values without shrinking.</returns>
    public static Arbitrary<TagHistoryRegister> Arbitrary() => Generator.ToArbitrary();

    private static Gen<TagHistoryEntry> Entry(TagId tag) =>
        from tool in Gen.Choose(1, 6)
        from presented in Count
        from read in Gen.Choose(0, presented)
        from strengths in Gen.Choose(0, read)
        from mean in Gen.Choose(short.MinValue, short.MaxValue)
        from fading in Gen.Frequency((2, Gen.Constant(0)), (1, Gen.Choose(0, TagFadingWatch.MaxLimit)))
        select new TagHistoryEntry(tag, new ToolId($"T{tool}"), presented, read, strengths, strengths * mean) { FadingSum = fading };
}
