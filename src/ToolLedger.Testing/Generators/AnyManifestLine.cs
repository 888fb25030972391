using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Generators;

/// <summary>Lines of every kind: half of them tools, the rest sets, counted items, consumables and sub-kits.</summary>
public static class AnyManifestLine
{
    private static Gen<Quantity> Quantity { get; } =
        from thousandths in Gen.OneOf(Gen.Choose(1, 40).Select(whole => 1000 * whole), Gen.Choose(1, 9_999))
        from unit in Gen.Elements("each", "spool", "metre", "box")
        select new Quantity(thousandths / 1000m, new Unit(unit));

    /// <summary>Generates lines of one number and, if they list a tool, one tool id.</summary>
    /// <param name="number">The line number, 1 to 9,999.</param>
    /// <param name="tool">The id of the tool or container.</param>
    /// <returns>A generator.</returns>
    public static Gen<ManifestLine> Numbered(int number, ToolId tool) =>
        from location in AnyText.OfLength(20).OrNull()
        from line in Gen.Frequency(
            (4, Tools(number, tool, location)),
            (1, Sets(number, tool, location)),
            (1, Counted(number, location)),
            (1, Consumables(number, location)),
            (1, SubKits(number, tool, location)))
        select line;

    private static Gen<ManifestLine> Tools(int number, ToolId id, string? location) =>
        from tool in AnyTool.WithId(id)
        from count in Gen.Frequency((4, Gen.Constant(0)), (1, Gen.Choose(1, 3)))
        from alternates in Gen.CollectToArray(Enumerable.Range(1, count), i => AnyTool.Like(tool, new ToolId($"{id.Value}-{i}")))
        select (ManifestLine)new ToolLine { Number = number, Location = location, Tool = tool, Alternates = alternates };

    private static Gen<ManifestLine> Sets(int number, ToolId id, string? location) =>
        from container in AnyTool.WithId(id)
        from contents in AnyText.OfLength(40)
        from total in Gen.Choose(SetLine.MinTotalCount, SetLine.MaxTotalCount)
        select (ManifestLine)new SetLine { Number = number, Location = location, Container = container, Contents = contents, TotalCount = total };

    // The kit's id follows the line's number, so that no manifest lists one sub-kit twice, and none itself.
    private static Gen<ManifestLine> SubKits(int number, ToolId id, string? location) =>
        from revision in Gen.Choose(1, 3)
        from container in AnyTool.WithId(id)
        from hasCase in Gen.Elements(true, false)
        select (ManifestLine)new SubKitLine
        {
            Number = number,
            Location = location,
            Kit = new KitId($"S{number}"),
            Revision = revision,
            Case = hasCase ? container : null,
        };

    private static Gen<ManifestLine> Counted(int number, string? location) =>
        from description in AnyText.OfLength(40)
        from quantity in Quantity
        select (ManifestLine)new CountedLine { Number = number, Location = location, Description = description, Quantity = quantity };

    private static Gen<ManifestLine> Consumables(int number, string? location) =>
        from description in AnyText.OfLength(40)
        from quantity in Quantity
        select (ManifestLine)new ConsumableLine { Number = number, Location = location, Description = description, Quantity = quantity };
}
