using System;
using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Presence;

namespace ToolLedger.Tests.Presence.Proof;

/// <summary>Models over the whole range that is allowed, boxes of every width, and passes of up to 65,535 looks.</summary>
public static class ExtremeDraws
{
    public static Arbitrary<DetectionModel> Models() => (
        from obscured in Gen.Frequency((1, Gen.Elements(0, 900_000_000, 1)), (3, Gen.Choose(0, 900_000_000)))
        from strays in Gen.Frequency((1, Gen.Elements(1000, 1_000_000_000)), (3, Gen.Choose(1000, 1_000_000_000)))
        from reads in Weight().Two()
        from misses in Weight().Two()
        select new DetectionModel(
            obscured / 1e9m, new BetaRate(decimal.Max(reads.Item1, reads.Item2), decimal.Min(misses.Item1, misses.Item2)), strays / 1e9m,
            new BetaRate(decimal.Min(reads.Item1, reads.Item2), decimal.Max(misses.Item1, misses.Item2)))).ToArbitrary();

    public static Arbitrary<Box> Boxes() => Gen.Frequency((1, Gen.Elements(1000, 10_000)), (3, Gen.Choose(1000, 10_000))).Select(static parts => new Box(parts / 1000m)).ToArbitrary();

    public static Arbitrary<PassLooks> Passes() => (
        from looks in Looks()
        from share in Gen.Frequency((2, Gen.Constant(0)), (1, Gen.Constant(1_000_000)), (3, Gen.Choose(0, 1_000_000)), (2, Gen.Choose(0, 1000)))
        select new PassLooks(looks, (int)(looks * (long)share / 1_000_000))).ToArbitrary();

    public static Gen<int> Looks() => Gen.Frequency((2, Gen.Choose(0, 60)), (2, Gen.Choose(61, 3000)), (1, Gen.Choose(3001, DetectionModel.MaxLooks)), (1, Gen.Constant(DetectionModel.MaxLooks)));

    /// <summary>A weight of a beta rate, evenly in its logarithm, or one of the ends.</summary>
    private static Gen<decimal> Weight() => Gen.Frequency(
        (1, Gen.Elements(BetaRate.MinParameter, BetaRate.MaxParameter, 1m)),
        (4, Gen.Choose(-3000, 6000).Select(static parts => decimal.Round((decimal)Math.Pow(10, parts / 1000.0), 6))));

    /// <summary>A robustness factor.</summary>
    public sealed record Box(decimal Factor);
}
