using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Generators;

/// <summary>Manifests that are accepted: 1 to 20 lines of every kind, numbered upward with gaps.</summary>
/// <remarks>Kits, revisions and tools come from small pools, so that two manifests often share one.</remarks>
public static class AnyManifest
{
    private const int ToolPoolCount = 24;

    /// <summary>Generates manifests.</summary>
    public static Gen<KitManifest> Generator { get; } = OfLines(20);

    /// <summary>The manifests as FsCheck wants them.</summary>
    /// <returns>Values without shrinking.</returns>
    public static Arbitrary<KitManifest> Arbitrary() => Generator.ToArbitrary();

    /// <summary>Generates manifests of 1 to so many lines.</summary>
    /// <param name="maxCount">Most lines, 1 to 24.</param>
    /// <returns>A generator.</returns>
    public static Gen<KitManifest> OfLines(int maxCount) =>
        from kit in Gen.Choose(1, 5)
        from revision in Gen.Choose(1, 4)
        from title in AnyText.OfLength(40)
        from effectiveFrom in AnyTime.Generator
        from signer in AnyText.OfLength(12)
        from role in AnyText.OfLength(12).OrNull()
        from signedAt in AnyTime.Generator
        from lines in Lines(maxCount)
        select new KitManifest(
            new KitId($"K{kit}"),
            revision,
            title,
            effectiveFrom,
            new Signature { By = new PersonId(signer), At = signedAt, Role = role is null ? default : new Role(role) },
            lines);

    private static Gen<ManifestLine[]> Lines(int maxCount) =>
        from count in Gen.Choose(1, maxCount)
        from gap in Gen.Choose(1, 3)
        from tools in Gen.Shuffle(Enumerable.Range(1, ToolPoolCount).ToArray())
        from lines in Gen.CollectToArray(Enumerable.Range(0, count), i => AnyManifestLine.Numbered(1 + (i * gap), new ToolId($"T{tools[i]}")))
        select lines;
}
