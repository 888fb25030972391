using System;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Records;

namespace ToolLedger.Testing.Generators;

/// <summary>Presentations of the minute that <see cref="AnyTagRead"/> fills: one to three passes, most with a known clock.</summary>
public static class AnyPresentation
{
    private static readonly SessionLoss[] AllLosses = Enum.GetValues<SessionLoss>();

    private static Gen<TimeSpan?> Offset { get; } = Gen.Frequency(
        (6, Gen.Constant((TimeSpan?)TimeSpan.Zero)),
        (2, Gen.Choose(-30, 30).Select(tenths => (TimeSpan?)TimeSpan.FromMilliseconds(100 * tenths))),
        (1, Gen.Constant((TimeSpan?)null)));

    private static Gen<ReportedLoss> Loss { get; } =
        from loss in Gen.Elements(AllLosses)
        from antenna in Gen.Choose(0, 4)
        from second in Gen.Choose(0, 59)
        select new ReportedLoss(loss, AnyTagRead.Start.AddSeconds(second), antenna == 0 ? default : new AntennaPort((byte)antenna));

    private static Gen<NearbyKit> Nearby { get; } =
        from kit in Gen.Choose(7, 9)
        from second in Gen.Choose(-60, 59)
        from stay in Gen.Choose(0, 60)
        let start = AnyTagRead.Start.AddSeconds(second)
        select new NearbyKit(new KitId($"K{kit}"), start, stay == 0 ? null : start.AddSeconds(stay));

    private static Gen<SurroundingsChange> Change { get; } =
        from person in GeneratedValues.FewIds("P")
        from what in GeneratedValues.Text(20)
        from second in Gen.Choose(-600, 59)
        select new SurroundingsChange(AnyTagRead.Start.AddSeconds(second), new PersonId(person), what);

    /// <summary>Generates presentations.</summary>
    public static Gen<Presentation> Generator { get; } =
        from station in AnyReadStation.Generator
        from passCount in Gen.Choose(1, 3)
        from hasEnd in Gen.Elements(true, false)
        from before in Offset
        from after in Offset
        from losses in Gen.Frequency((4, Gen.Constant(Array.Empty<ReportedLoss>())), (1, Loss.ArrayOf(2)))
        from kitCount in Gen.Choose(0, 3)
        from nearby in Gen.Frequency((3, Gen.Constant(Array.Empty<NearbyKit>())), (1, Nearby.ArrayOf(2)))
        from changes in Gen.Frequency((3, Gen.Constant(Array.Empty<SurroundingsChange>())), (1, Change.ArrayOf(2)))
        select new Presentation
        {
            Id = new SessionId("S1"),
            Station = station,
            Kits = [.. Enumerable.Range(1, kitCount).Select(number => new KitId($"K{number}"))],
            From = AnyTagRead.Start,
            Until = hasEnd ? AnyTagRead.Start.AddSeconds(60) : null,
            PassStarts = [.. Enumerable.Range(1, passCount - 1).Select(pass => AnyTagRead.Start.AddSeconds((20 * pass) + 0.3))],
            ReaderClockOffset = before,
            ReaderClockOffsetAfter = after,
            Losses = losses,
            NearbyKits = nearby,
            SurroundingsChanges = changes,
            TimeSource = before is null && after is null ? ReadTimeSource.HostArrival : ReadTimeSource.ReaderClock,
        };

    /// <summary>The presentations as FsCheck wants them.</summary>
    /// <returns>Values without shrinking.</returns>
    public static Arbitrary<Presentation> Arbitrary() => Generator.ToArbitrary();
}
