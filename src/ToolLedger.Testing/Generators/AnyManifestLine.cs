using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Generators;

/// <summary>Lines of every kind: half of them tools, the rest sets, counted items and consumables.</summary>
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
            (3, Tools(number, tool, location)),
            (1, Sets(number, tool, location)),
            (1, Counted(number, location)),
            (1, Consumables(number, location)))
        select line;

    private static Gen<ManifestLine> Tools(int number, ToolId id, string? location) =>
        AnyTool.WithId(id).Select(ManifestLine (tool) => new ToolLine { Number = number, Location = location, Tool = tool });

    private static Gen<ManifestLine> Sets(int number, ToolId id, string? location) =>
        from container in AnyTool.WithId(id)
        from contents in AnyText.OfLength(40)
        from total in Gen.Choose(SetLine.MinTotalCount, SetLine.MaxTotalCount)
        select (ManifestLine)new SetLine { Number = number, Location = location, Container = container, Contents = contents, TotalCount = total };

    private static Gen<ManifestLine> Counted(int number, string? location) =>
        from description in AnyText.OfLength(40)
        from quantity in Quantity
        select (ManifestLine)new CountedLine { Number = number, Location = location, Description = description, Quantity = quantity };

    private static Gen<ManifestLine> Consumables(int number, string? location) =>
        from description in AnyText.OfLength(40)
        from quantity in Quantity
        select (ManifestLine)new ConsumableLine { Number = number, Location = location, Description = description, Quantity = quantity };
}
