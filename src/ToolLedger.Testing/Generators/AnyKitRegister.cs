using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Kits;

namespace ToolLedger.Testing.Generators;

/// <summary>Registers of up to 12 manifests of at most 6 lines: several kits and revisions that share tools, effective in any order.</summary>
public static class AnyKitRegister
{
    /// <summary>Generates registers.</summary>
    public static Gen<KitRegister> Generator { get; } =
        from count in Gen.Choose(0, 12)
        from manifests in AnyManifest.OfLines(6).ArrayOf(count)
        select new KitRegister(manifests.DistinctBy(manifest => (manifest.Id, manifest.Revision)));

    /// <summary>The registers as FsCheck wants them.</summary>
    /// <returns>Values without shrinking.</returns>
    public static Arbitrary<KitRegister> Arbitrary() => Generator.ToArbitrary();
}
