using System;
using System.Linq;
using FsCheck.Xunit;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Testing.Generators;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Kits;

public sealed class KitRegisterTests
{
    private static readonly DateTimeOffset Start = new(2026, 3, 1, 0, 0, 0, TimeSpan.Zero);

    [Property(Arbitrary = [typeof(AnyKitRegister), typeof(AnyTime)])]
    public bool The_revision_in_force_is_the_highest_one_effective_by_then(KitRegister register, DateTimeOffset at) =>
        register.KitIds.All(kit => register.Find(kit, at) == InForce(register, kit, at));

    [Property(Arbitrary = [typeof(AnyKitRegister), typeof(AnyTime)])]
    public bool The_kit_of_a_tool_is_one_whose_manifest_in_force_lists_it(KitRegister register, DateTimeOffset at) =>
        ToolsOf(register).All(tool =>
        {
            KitManifest[] expected = [.. register.KitIds.Select(kit => InForce(register, kit, at)).OfType<KitManifest>().Where(manifest => manifest.FindLine(tool) is not null)];
            return register.ManifestsWith(tool, at).SequenceEqual(expected) && register.KitOf(tool, at) == (expected.Length == 0 ? null : expected[0].Id);
        });

    [Property(Arbitrary = [typeof(AnyKitRegister)])]
    public bool A_fault_is_shown_exactly_for_the_tools_that_two_kits_list_at_one_instant(KitRegister register)
    {
        // Between two effective times nothing changes, so looking at each of them is looking at all time.
        var twice = ToolsOf(register).Where(tool => register.Manifests.Any(manifest => register.ManifestsWith(tool, manifest.EffectiveFrom).Count > 1));
        var faulty = register.Faults.Where(fault => fault.Rule == KitRules.ToolInTwoKits.Code).Select(fault => new ToolId(fault.Reason.Values.Single(value => value.Key is "tool").Value));
        return twice.ToHashSet().SetEquals(faulty);
    }

    [Property(Arbitrary = [typeof(AnyKitRegister)])]
    public bool The_order_of_manifests_and_a_repeated_one_change_nothing(KitRegister register, int seed)
    {
        KitManifest[] shuffled = [.. register.Manifests, .. register.Manifests.Take(2)];
        new Random(seed).Shuffle(shuffled);
        var other = new KitRegister(shuffled);
        return other.Digest == register.Digest && other.Faults.SequenceEqual(register.Faults) && other.KitIds.SequenceEqual(register.KitIds);
    }

    /// <summary>Property 8 of the trade: a revision with a later effective time changes no earlier instant.</summary>
    [Property(Arbitrary = [typeof(AnyKitRegister), typeof(AnyTime)])]
    public bool A_revision_that_takes_effect_later_changes_no_earlier_instant(KitRegister register, DateTimeOffset at)
    {
        DateTimeOffset later = at.AddTicks(1);
        var after = new KitRegister(register.Manifests.Concat(register.KitIds.Select(kit => Make(kit.Value, 99, later, "T1"))));
        return register.KitIds.All(kit => after.Find(kit, at) == register.Find(kit, at))
            && ToolsOf(register).All(tool => after.ManifestsWith(tool, at).SequenceEqual(register.ManifestsWith(tool, at)));
    }

    [Property(Arbitrary = [typeof(AnyKitRegister)])]
    public bool A_stated_revision_is_found_by_its_number(KitRegister register) =>
        register.Manifests.All(manifest => register.Find(manifest.Id, manifest.Revision) == manifest)
        && register.Find(new KitId("no such kit"), 1) is null && register.Find(new KitId("no such kit"), Start) is null;

    [Fact]
    public void An_edited_revision_is_refused_and_the_same_one_twice_is_not()
    {
        KitManifest manifest = Make("K1", 3, Start, "T1");
        Assert.Single(new KitRegister([manifest, Make("K1", 3, Start, "T1")]).Manifests);
        RecordIssue issue = Assert.Single(Assert.Throws<RecordException>(() => new KitRegister([manifest, Make("K1", 3, Start, "T2")])).Issues);
        Assert.Equal("$[1]: Revision 3 of kit K1 is given twice with different content. (kit.revision-edited)", issue.ToString());
    }

    /// <summary>The data fault of scenario S38: T6 is on the manifests of K1 and K2, both out.</summary>
    [Fact]
    public void S38_a_tool_on_two_manifests_in_force_is_a_fault_and_not_a_refusal()
    {
        var register = new KitRegister([Make("K2", 1, Start.AddHours(5), "T6"), Make("K1", 3, Start, "T6", "T1")]);
        Assert.Equal("$: The tool T6 is on the manifests of kits K1 and K2 from 2026-03-01T05:00:00Z on. (kit.tool-in-two-kits)",
            Assert.Single(register.Faults).ToString());
        Assert.Equal("K1", register.KitOf(new ToolId("T6"), Start.AddHours(6))?.Value);
        Assert.Equal(2, register.ManifestsWith(new ToolId("T6"), Start.AddHours(6)).Count);
        Assert.Single(register.ManifestsWith(new ToolId("T6"), Start.AddHours(4)));
    }

    [Fact]
    public void A_tool_that_moved_to_another_kit_by_new_revisions_is_no_fault()
    {
        var register = new KitRegister([Make("K1", 1, Start, "T1", "T6"), Make("K1", 2, Start.AddHours(3), "T1"), Make("K2", 1, Start.AddHours(3), "T6")]);
        Assert.Empty(register.Faults);
        Assert.Equal("K1", register.KitOf(new ToolId("T6"), Start.AddHours(3).AddTicks(-1))?.Value);
        Assert.Equal("K2", register.KitOf(new ToolId("T6"), Start.AddHours(3))?.Value);
    }

    [Fact]
    public void A_revision_overtaken_before_it_took_effect_is_never_in_force()
    {
        var register = new KitRegister([Make("K1", 2, Start, "T1"), Make("K1", 1, Start.AddHours(1), "T6")]);
        Assert.Equal(2, register.Find(new KitId("K1"), Start.AddHours(2))?.Revision);
        Assert.Null(register.KitOf(new ToolId("T6"), Start.AddHours(2)));
    }

    [Fact]
    public void The_empty_register_knows_nothing()
    {
        Assert.Empty(KitRegister.Empty.Manifests);
        Assert.Empty(KitRegister.Empty.Faults);
        Assert.Null(KitRegister.Empty.Find(new KitId("K1"), Start));
        Assert.Null(KitRegister.Empty.KitOf(new ToolId("T1"), Start));
        Assert.Throws<ArgumentNullException>(() => new KitRegister([null!]));
    }

    [Fact]
    public void A_tool_in_very_many_kits_gives_a_limited_list_of_faults()
    {
        var register = new KitRegister(Enumerable.Range(0, 12_000).Select(i => Make($"K{i}", 1, Start.AddSeconds(i), "T1")));
        Assert.Equal(10_001, register.Faults.Count);
        Assert.Equal("record.more-issues", register.Faults[^1].Rule);
    }

    private static KitManifest? InForce(KitRegister register, KitId kit, DateTimeOffset at) =>
        register.Manifests.Where(manifest => manifest.Id == kit && manifest.EffectiveFrom <= at).MaxBy(manifest => manifest.Revision);

    private static ToolId[] ToolsOf(KitRegister register) =>
        [.. register.Manifests.SelectMany(manifest => manifest.Lines).Select(line => line.Tool).OfType<Tool>().Select(tool => tool.Id).Distinct()];

    private static KitManifest Make(string kit, int revision, DateTimeOffset from, params string[] tools) => new(
        new KitId(kit), revision, "kit", from, new Signature { By = new PersonId("p-1"), At = Start },
        tools.Select((tool, i) => new ToolLine { Number = i + 1, Tool = new Tool { Id = new ToolId(tool), Description = "spanner" } }));
}
