using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Kits;

namespace ToolLedger.Testing.Generators;

/// <summary>Registers of up to 12 manifests of at most 6 lines: several kits and revisions that share tools, effective in any order; some are sub-kits of others.</summary>
public static class AnyKitRegister
{
    /// <summary>Generates registers.</summary>
    public static Gen<KitRegister> Generator { get; } =
        from count in Gen.Choose(0, 12)
        from manifests in AnyManifest.OfLines(6).ArrayOf(count)
        from asSubKit in Gen.Elements(true, false).ArrayOf(count)
        from numbers in Gen.Choose(1, 8).ArrayOf(count)
        select new KitRegister(manifests
            .Select((manifest, i) => asSubKit[i] ? AsSubKit(manifest, numbers[i]) : manifest)
            .DistinctBy(manifest => (manifest.Id, manifest.Revision)));

    /// <summary>The registers as FsCheck wants them.</summary>
    /// <returns>Values without shrinking.</returns>
    public static Arbitrary<KitRegister> Arbitrary() => Generator.ToArbitrary();

    /// <summary>The manifest as that of a sub-kit, which lists no sub-kits itself; unchanged if it would list nothing.</summary>
    private static KitManifest AsSubKit(KitManifest manifest, int number)
    {
        ManifestLine[] lines = [.. manifest.Lines.Where(line => line is not SubKitLine)];
        return lines.Length == 0
            ? manifest
            : new KitManifest(new KitId($"S{number}"), manifest.Revision, manifest.Title, manifest.EffectiveFrom, manifest.SignedBy, lines);
    }
}
