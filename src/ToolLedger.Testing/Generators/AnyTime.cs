using System;
using FsCheck;
using FsCheck.Fluent;

namespace ToolLedger.Testing.Generators;

/// <summary>Instants of a few days with offsets from UTC as sites have them, some with parts of a second.</summary>
public static class AnyTime
{
    private static readonly DateTimeOffset Start = new(2026, 3, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>Generates instants on full hours of ten days, so that equal ones occur; one in four is off by some ticks.</summary>
    public static Gen<DateTimeOffset> Generator { get; } =
        from hour in Gen.Choose(0, 240)
        from ticks in Gen.Frequency((3, Gen.Constant(0)), (1, Gen.Choose(1, 9_999_999)))
        from offsetMinutes in Gen.Elements(0, 0, 60, -300, 330, 600)
        select Start.AddHours(hour).AddTicks(ticks).ToOffset(TimeSpan.FromMinutes(offsetMinutes));

    /// <summary>The instants as FsCheck wants them.</summary>
    /// <returns>Values without shrinking.</returns>
    public static Arbitrary<DateTimeOffset> Arbitrary() => Generator.ToArbitrary();
}
