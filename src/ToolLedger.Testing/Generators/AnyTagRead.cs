using System;
using System.Collections.Generic;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Identifiers;
using ToolLedger.Reads;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Generators;

/// <summary>Reads of a few tags on a few antennas around one minute, so that looks, repeats and edges meet often.</summary>
public static class AnyTagRead
{
    /// <summary>The start of the minute: 2026-03-01T15:55:00Z.</summary>
    public static DateTimeOffset Start { get; } = new(2026, 3, 1, 15, 55, 0, TimeSpan.Zero);

    /// <summary>The tags of the reads: five tools' and the control tags of generated stations.</summary>
    public static IReadOnlyList<TagId> Tags { get; } =
    [
        .. Enumerable.Range(1, 5).Select(number => TagId.FromEpc(Epc.Parse($"3034257BF7194E40000000{number:X2}"))),
        AnyReadStation.ControlTag,
        AnyReadStation.SecondControlTag,
    ];

    /// <summary>Generates reads from 2 s before the minute to 2 s after it; nearly all on antennas 1 to 4.</summary>
    public static Gen<TagRead> Generator { get; } =
        from tag in Gen.Elements(Tags.ToArray())
        from antenna in Gen.Frequency((12, Gen.Choose(1, 4)), (1, Gen.Constant(0)), (1, Gen.Constant(9)))
        from tenths in Gen.Choose(-20, 620)
        from length in Gen.Frequency((3, Gen.Constant(0)), (1, Gen.Choose(1, 30)))
        from strength in Gen.Frequency((3, Gen.Choose(-80, -30)), (1, Gen.Constant(0)))
        from count in Gen.Frequency((3, Gen.Constant(0)), (1, Gen.Choose(1, 5)))
        from tid in Gen.Frequency((5, Gen.Constant(0)), (1, Gen.Choose(1, 4)))
        from reportId in Gen.Frequency((4, Gen.Constant(0)), (1, Gen.Choose(1, 50)))
        let first = Start.AddMilliseconds(100 * tenths)
        select new TagRead(tag, antenna == 0 ? default : new AntennaPort((byte)antenna), first)
        {
            LastSeen = first.AddMilliseconds(100 * length),
            Strength = strength == 0 ? null : new Rssi((short)(100 * strength)),
            Count = count == 0 ? null : count,
            Tid = tid == 0 ? default : Tid.Parse($"E280110{tid}"),
            ReportId = reportId == 0 ? null : reportId,
        };

    /// <summary>The reads as FsCheck wants them.</summary>
    /// <returns>Values without shrinking.</returns>
    public static Arbitrary<TagRead> Arbitrary() => Generator.ToArbitrary();
}
