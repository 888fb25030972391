using System;
using System.Collections.Generic;
using System.Linq;
using FsCheck.Xunit;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Testing.Generators;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Kits;

/// <summary>What one revision lists differently from another.</summary>
public sealed class ManifestChangeTests
{
    private static readonly DateTimeOffset Start = new(2026, 3, 1, 0, 0, 0, TimeSpan.Zero);

    [Fact]
    public void Moment_5_A_new_revision_says_line_by_line_what_is_different()
    {
        KitManifest earlier = Make(1, Line(1, "T1", "M1"), Line(2, "T2", "M2"), Rags(3, 6), Line(4, "T4", "M4"));
        KitManifest later = Make(2, Line(1, "T1", "M1B"), Line(5, "T2", "M2"), Rags(3, 8), Line(6, "T6", "M6"));
        Assert.Equal(
            [
                "line 1, tool.mark: M1 is now M1B",
                "line 2 is now line 5: spanner",
                "line 3, quantity: 6 is now 8",
                "removed line 4: spanner, 1 each",
                "added line 6: spanner, 1 each",
            ],
            earlier.ChangesTo(later).Select(static change => change.ToString()));
        Assert.Equal(ManifestChangeKind.Moved, earlier.ChangesTo(later)[1].Kind);
    }

    [Fact]
    public void An_untagged_item_that_got_another_number_is_a_move_and_its_kind_a_change()
    {
        KitManifest earlier = Make(1, Rags(3, 6));
        Assert.Equal(ManifestChangeKind.Moved, Assert.Single(earlier.ChangesTo(Make(2, Rags(4, 6)))).Kind);
        ManifestChange change = Assert.Single(earlier.ChangesTo(Make(2, new ConsumableLine { Number = 3, Description = "rags", Quantity = new Quantity(6, Unit.Each) })));
        Assert.Equal(("kind", "counted", "consumable"), (change.Member, change.Old, change.New));
    }

    [Fact]
    public void A_manifest_of_another_kit_cannot_be_compared()
    {
        KitManifest other = new(new KitId("K2"), 1, "kit", Start, Signed(), [Rags(1, 1)]);
        Assert.Throws<ArgumentException>(() => Make(1, Rags(1, 1)).ChangesTo(other));
    }

    [Property(Arbitrary = [typeof(AnyManifest)])]
    public bool Without_a_difference_in_the_lines_there_is_no_change(KitManifest manifest) =>
        manifest.ChangesTo(KitManifest.Parse(manifest.ToJson())).Count == 0
        && manifest.ChangesTo(Like(manifest, manifest, 999)).Count == 0;

    [Property(Arbitrary = [typeof(AnyManifest)])]
    public bool Backwards_the_same_number_of_changes_is_found_with_old_and_new_swapped(KitManifest earlier, KitManifest other)
    {
        KitManifest later = Like(earlier, other, 999);
        IReadOnlyList<ManifestChange> there = earlier.ChangesTo(later);
        IReadOnlyList<ManifestChange> back = later.ChangesTo(earlier);
        return there.Count == back.Count
            && there.Select(Forward).Order(StringComparer.Ordinal).SequenceEqual(back.Select(Backward).Order(StringComparer.Ordinal))
            && (there.Count == 0) == (LinesDigest(earlier) == LinesDigest(later));
    }

    /// <summary>Every line is either in a pair, or told of once.</summary>
    [Property(Arbitrary = [typeof(AnyManifest)])]
    public bool The_numbers_of_lines_add_up(KitManifest earlier, KitManifest other)
    {
        IReadOnlyList<ManifestChange> changes = earlier.ChangesTo(Like(earlier, other, 999));
        int removed = changes.Count(static change => change.Kind == ManifestChangeKind.Removed);
        int added = changes.Count(static change => change.Kind == ManifestChangeKind.Added);
        return earlier.Lines.Count - removed == other.Lines.Count - added;
    }

    private static Digest LinesDigest(KitManifest manifest) => Like(manifest, manifest, 1).Digest;

    private static string Forward(ManifestChange change) => $"{change.Before?.Number} {change.After?.Number} {change.Member} {change.Old} {change.New}";

    private static string Backward(ManifestChange change) => $"{change.After?.Number} {change.Before?.Number} {change.Member} {change.New} {change.Old}";

    private static KitManifest Like(KitManifest kit, KitManifest lines, int revision) => new(kit.Id, revision, "kit", Start, Signed(), lines.Lines);

    private static KitManifest Make(int revision, params ManifestLine[] lines) => new(new KitId("K1"), revision, "kit", Start, Signed(), lines);

    private static Signature Signed() => new() { By = new PersonId("p-1"), At = Start };

    private static CountedLine Rags(int number, int amount) => new() { Number = number, Description = "rags", Quantity = new Quantity(amount, Unit.Each) };

    private static ToolLine Line(int number, string tool, string mark) =>
        new() { Number = number, Tool = new Tool { Id = new ToolId(tool), Description = "spanner", Mark = mark } };
}
