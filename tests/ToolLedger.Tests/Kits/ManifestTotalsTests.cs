using System;
using System.Linq;
using FsCheck.Xunit;
using ToolLedger.Kits;
using ToolLedger.Testing.Generators;
using ToolLedger.Tests.Reconciliation;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Kits;

/// <summary>Moment 4 of the trade: totals per drawer and per kit, and what a reader can see versus what a person must count.</summary>
public sealed class ManifestTotalsTests
{
    private static readonly DateTimeOffset AsOf = World.Start;

    [Fact]
    public void The_scenario_kit_adds_up_by_drawer_and_by_unit()
    {
        KitManifest manifest = new World { T10Pieces = 3 }.K1Revision3();
        ManifestTotals totals = ManifestTotals.Of(manifest, KitRegister.Empty, new TagRegister(new World().Bindings), AsOf);

        // Twelve tools, a set of ten with its holder, and six rags; the wire has a unit of its own.
        Assert.Equal(["28 each", "1 spool"], totals.Kit.Items.Select(static item => item.ToString()));
        Assert.Equal((15, 13, 4), (totals.Kit.LineCount, totals.Kit.TaggedLineCount, totals.Kit.PeopleLineCount));
        Assert.Equal(12 + 1 + 2, totals.Kit.PieceCount);
        Assert.Equal([null, "left pocket", "right pocket"], totals.Locations.Select(static place => place.Location));
        Assert.Equal(["16 each", "6 each", "6 each"], totals.Locations.Select(static place => place.Items[0].ToString()));
    }

    [Fact]
    public void A_tool_whose_tag_is_not_live_must_be_sighted_by_people()
    {
        ManifestTotals totals = ManifestTotals.Of(new World().K1Revision3(), KitRegister.Empty, TagRegister.Empty, AsOf);
        Assert.Equal((0, 15), (totals.Kit.TaggedLineCount, totals.Kit.PeopleLineCount));
    }

    [Fact]
    public void A_sub_kit_counts_once_at_the_place_where_it_sits()
    {
        var shift = new SubKitWorld { IsNestedTwice = true };
        ManifestTotals totals = ManifestTotals.Of(shift.K1(), shift.Kits(), new TagRegister(shift.World.Bindings), AsOf);

        // Two tools; the case and its five tools; two tools two levels down, whose sub-kit has no case.
        Assert.Equal(["10 each"], totals.Kit.Items.Select(static item => item.ToString()));
        Assert.Equal(["lid 8 each", "tray 2 each"], totals.Locations.Select(static place => $"{place.Location} {place.Items[0]}"));
        Assert.Equal((11, 10, 0), (totals.Kit.LineCount, totals.Kit.TaggedLineCount, totals.Kit.PeopleLineCount));
        Assert.Empty(totals.Unresolved);
    }

    [Property(Arbitrary = [typeof(AnyKitRegister)])]
    public bool Places_add_up_to_the_kit(KitRegister register) => register.Manifests.All(manifest =>
    {
        ManifestTotals totals = ManifestTotals.Of(manifest, register, TagRegister.Empty, AsOf);
        return totals.Kit.LineCount == totals.Locations.Sum(static place => place.LineCount)
            && totals.Kit.PieceCount == totals.Locations.Sum(static place => place.PieceCount)
            && totals.Kit.PeopleLineCount == totals.Locations.Sum(static place => place.PeopleLineCount)
            && totals.Kit.Items.All(item => item.Amount == totals.Locations.SelectMany(static place => place.Items).Where(part => part.Unit == item.Unit).Sum(static part => part.Amount))
            && totals.Unresolved.All(line => register.Find(line) is null);
    });
}
