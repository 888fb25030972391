using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Threading.Tasks;
using ToolLedger.Presence;
using ToolLedger.Tests.Architecture;

namespace ToolLedger.Tests.Presence.Proof;

/// <summary>
/// One run over all strata, shared by the tests of a class. TOOLLEDGER_RISK_KITS sets how many kits (and absent tools) a stratum; from 60,000 on the claims are tested in full.
/// Seeds are 1, 2, 3 and so on, in the order of the strata. The tables are left in artifacts/presence-calibration.md.
/// </summary>
public sealed class RiskRun
{
    /// <summary>The run that docs/presence-calibration.md reports.</summary>
    public const int DocumentedKits = 1_000_000;

    private static readonly (string Name, BetaRate Rate)[] Qualities = [("good", new BetaRate(8, 2)), ("fair", new BetaRate(2.5m, 2.5m)), ("poor", new BetaRate(1.2m, 3.5m))];

    private static readonly RiskShape[] Shapes =
    [
        new(5, [20, 20]), new(20, [20]), new(20, [20, 20]), new(20, [20, 20, 20]), new(60, [20, 20]), new(20, [40, 10]), new(20, [20, 20], IsChanged: true),
    ];

    public RiskRun()
    {
        Kits = Environment.GetEnvironmentVariable("TOOLLEDGER_RISK_KITS") is { Length: > 0 } text ? int.Parse(text, NumberStyles.None, CultureInfo.InvariantCulture) : 3000;
        foreach ((string name, BetaRate rate) in Qualities)
        {
            var model = new DetectionModel(0.05m, rate, 0.05m, new BetaRate(0.6m, 8));
            foreach (RiskShape shape in Shapes)
            {
                var policy = new StatedRiskPolicy { Model = model };
                Strata.AddRange(RiskTruth.Box.Select(truth => new RiskStratum(name, policy, shape, truth)));
                Beyond.AddRange(shape.Name == Shapes[2].Name ? RiskTruth.Beyond.Select(truth => new RiskStratum(name, policy, shape, truth)) : []);
            }
        }

        RiskStratum[] all = [.. Strata, .. Beyond];
        var tallies = new RiskTally[all.Length];
        Parallel.For(0, all.Length, new ParallelOptions { MaxDegreeOfParallelism = 2 }, i => tallies[i] = all[i].Run(Kits, Kits, (ulong)(i + 1)));
        Tallies = tallies[..Strata.Count];
        BeyondTallies = tallies[Strata.Count..];
        string folder = Path.Combine(House.RootFolder(), "artifacts");
        Directory.CreateDirectory(folder);
        File.WriteAllText(Path.Combine(folder, "presence-calibration.md"), string.Join('\n', RiskTables.All(this).Append(RiskTables.Summary(this))));
    }

    public int Kits { get; }

    public bool IsLong => Kits >= 60_000;

    /// <summary>What the claim is made of: the middle and the corners of the box, for every quality and shape.</summary>
    internal List<RiskStratum> Strata { get; } = [];

    internal RiskTally[] Tallies { get; }

    /// <summary>What lies outside the box.</summary>
    internal List<RiskStratum> Beyond { get; } = [];

    internal RiskTally[] BeyondTallies { get; }

    internal IEnumerable<(RiskStratum Stratum, RiskTally Tally)> All => Strata.Zip(Tallies);

    /// <summary>1 % over all strata.</summary>
    public double Confidence => 1 - (0.01 / Strata.Count);
}
