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
    public static Gen<Tool> WithId(ToolId id) => Of(id, Gen.Frequency((3, Gen.Constant((string?)null)), (1, Gen.Elements<string?>("oxygen", "blue"))));

    /// <summary>Generates tools that may stand for another: of its segregation class, otherwise any.</summary>
    /// <param name="tool">The other tool.</param>
    /// <param name="id">The id of the tool to make; not empty.</param>
    /// <returns>A generator.</returns>
    internal static Gen<Tool> Like(Tool tool, ToolId id) => Of(id, Gen.Constant(tool.SegregationClass));

    private static Gen<Tool> Of(ToolId id, Gen<string?> segregationClasses) =>
        from description in AnyText.OfLength(40)
        from mark in AnyText.OfLength(32).OrNull()
        from pieceCount in Gen.Frequency((4, Gen.Constant(1)), (1, Gen.Choose(2, 99)))
        from needsCalibration in Gen.Elements(false, false, true)
        from toolClass in AnyText.OfLength(16).OrNull()
        from segregationClass in segregationClasses
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
            SegregationClass = segregationClass,
            ExternalIds = [.. Enumerable.Range(0, externalCount).Select(i => new ExternalId(i == 0 ? "asset" : "part", externalValue))],
        };
}
