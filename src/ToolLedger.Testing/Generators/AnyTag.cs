using System;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Identifiers;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Generators;

/// <summary>Tag ids of every kind: mostly EPCs of 96 bits, also other lengths up to 512 bits, numbers and texts. Never an empty one.</summary>
public static class AnyTag
{
    private static Gen<ulong> Number { get; } = Gen.Choose(0, 255).ArrayOf(8)
        .Select(bytes => bytes.Aggregate(0UL, (number, value) => (number << 8) | (uint)value));

    /// <summary>Generates tag ids.</summary>
    public static Gen<TagId> Generator { get; } = Gen.Frequency(
        (6, OfBits(Gen.Constant(96))),
        (3, OfBits(Gen.Choose(1, 512))),
        (1, Number.Select(TagId.FromIso11784)),
        (1, Number.Select(TagId.FromIso15693)),
        (1, AnyText.OfLength(64).Select(TagId.FromText)));

    /// <summary>The tag ids as FsCheck wants them.</summary>
    /// <returns>Values without shrinking.</returns>
    public static Arbitrary<TagId> Arbitrary() => Generator.ToArbitrary();

    private static Gen<TagId> OfBits(Gen<int> bitCounts) =>
        from bitCount in bitCounts
        from bytes in Gen.Choose(0, 255).ArrayOf((bitCount + 7) / 8)
        select TagId.FromEpc(Epc.FromBytes(Array.ConvertAll(bytes, value => (byte)value), bitCount));
}
