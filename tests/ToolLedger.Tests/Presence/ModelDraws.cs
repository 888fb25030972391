using System;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Presence;
using ToolLedger.Testing.Generators;

namespace ToolLedger.Tests.Presence;

/// <summary>Models and passes for properties: few and many looks, and the extremes.</summary>
public static class ModelDraws
{
    public static Arbitrary<DetectionModel> Models() => PolicyGenerators.DetectionModels().ToArbitrary();

    public static Arbitrary<PassLooks[]> Passes() => Gen.ArrayOf(Pass()).Where(static passes => passes.Length is > 0 and <= 4).ToArbitrary();

    public static Gen<PassLooks> Pass() =>
        from looks in Gen.Frequency((6, Gen.Choose(1, 60)), (1, Gen.Choose(0, 300)))
        from share in Gen.Frequency((3, Gen.Constant(0)), (4, Gen.Choose(0, 100)), (1, Gen.Constant(100)))
        from surroundings in Gen.Frequency((4, Gen.Constant(0)), (1, Gen.Choose(0, 2)))
        from degraded in Gen.Frequency((4, Gen.Constant(false)), (1, Gen.Constant(true)))
        select new PassLooks(looks, looks * share / 100) { Surroundings = surroundings, IsDegraded = degraded };

    /// <summary>The same passes with one more read in one of them; null where it is full.</summary>
    public static PassLooks[]? WithOneMoreRead(PassLooks[] passes, int draw)
    {
        int at = (int)((uint)draw % passes.Length);
        return passes[at].Reads == passes[at].Looks ? null : [.. passes.Select((pass, index) => index == at ? pass with { Reads = pass.Reads + 1 } : pass)];
    }

    public static bool IsRead(PassLooks[] passes) => Array.Exists(passes, static pass => pass.Reads > 0);
}
