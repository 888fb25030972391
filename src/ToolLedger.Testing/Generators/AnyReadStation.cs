using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Identifiers;
using ToolLedger.Reads;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Generators;

/// <summary>Read stations of one to four antennas, most of them with control tags on every antenna.</summary>
public static class AnyReadStation
{
    /// <summary>The control tag that generated stations have first.</summary>
    public static TagId ControlTag { get; } = TagId.FromEpc(Epc.Parse("C00000000000000000000001"));

    /// <summary>A second control tag, which some stations have on one antenna.</summary>
    public static TagId SecondControlTag { get; } = TagId.FromEpc(Epc.Parse("C00000000000000000000002"));

    /// <summary>Generates stations.</summary>
    public static Gen<ReadStation> Generator { get; } =
        from antennaCount in Gen.Choose(1, 4)
        from controlled in Gen.Frequency((6, Gen.Constant(2)), (1, Gen.Constant(1)), (1, Gen.Constant(0)))
        from hasSecond in Gen.Frequency((4, Gen.Constant(false)), (1, Gen.Constant(true)))
        let antennas = Enumerable.Range(1, antennaCount).Select(number => new AntennaPort((byte)number)).ToArray()
        select new ReadStation
        {
            Id = new StationId("R1"),
            Antennas = antennas,
            ControlTags =
            [
                .. controlled == 0 ? [] : (ControlTag[])[new ControlTag(ControlTag, controlled == 1 ? antennas[0] : default)],
                .. hasSecond ? (ControlTag[])[new ControlTag(SecondControlTag, antennas[^1])] : [],
            ],
        };

    /// <summary>The stations as FsCheck wants them.</summary>
    /// <returns>Values without shrinking.</returns>
    public static Arbitrary<ReadStation> Arbitrary() => Generator.ToArbitrary();
}
