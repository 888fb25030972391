using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Generators;

/// <summary>Tools of one or several pieces, with and without mark, class, calibration need and external ids.</summary>
public static class AnyTool
{
    /// <summary>Generates tools.</summary>
    public static Gen<Tool> Generator { get; } = AnyText.OfLength(64).SelectMany(id => WithId(new ToolId(id)));

    /// <summary>The tools as FsCheck wants them.</summary>
    /// <returns>Values without shrinking.</returns>
    public static Arbitrary<Tool> Arbitrary() => Generator.ToArbitrary();

    /// <summary>Generates tools of one id.</summary>
    /// <param name="id">The id; not empty.</param>
    /// <returns>A generator.</returns>
    public static Gen<Tool> WithId(ToolId id) =>
        from description in AnyText.OfLength(40)
        from mark in AnyText.OfLength(32).OrNull()
        from pieceCount in Gen.Frequency((4, Gen.Constant(1)), (1, Gen.Choose(2, 99)))
        from needsCalibration in Gen.Elements(false, false, true)
        from toolClass in AnyText.OfLength(16).OrNull()
        from externalCount in Gen.Choose(0, 2)
        from externalValue in AnyText.OfLength(20)
        select new Tool
        {
            Id = id,
            Description = description,
            Mark = mark,
            PieceCount = pieceCount,
            NeedsCalibration = needsCalibration,
            ToolClass = toolClass,
            ExternalIds = [.. Enumerable.Range(0, externalCount).Select(i => new ExternalId(i == 0 ? "asset" : "part", externalValue))],
        };
}
