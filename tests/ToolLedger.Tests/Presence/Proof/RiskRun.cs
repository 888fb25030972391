using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Text;
using System.Threading.Tasks;
using ToolLedger.Presence;
using ToolLedger.Tests.Architecture;

namespace ToolLedger.Tests.Presence.Proof;

/// <summary>One run over all strata, shared by the tests of a class. TOOLLEDGER_RISK_KITS sets how many kits (and absent tools) a stratum; from 60,000 on the claims are tested in full. Seeds are 1, 2, 3 and so on.</summary>
public sealed class RiskRun
{
    public RiskRun()
    {
        Kits = Environment.GetEnvironmentVariable("TOOLLEDGER_RISK_KITS") is { Length: > 0 } text ? int.Parse(text, NumberStyles.None, CultureInfo.InvariantCulture) : 3000;
        foreach ((string quality, BetaRate rate) in ((string, BetaRate)[])[("good", new BetaRate(8, 2)), ("fair", new BetaRate(2.5m, 2.5m)), ("poor", new BetaRate(1.2m, 3.5m))])
        {
            foreach ((int lines, int passes) in ((int, int)[])[(5, 2), (20, 1), (20, 2), (20, 3), (60, 2)])
            {
                Strata.Add(new RiskStratum(quality, rate, lines, passes, "as modelled", 1, 1));
                Strata.Add(new RiskStratum(quality, rate, lines, passes, "wet and neighbours: both shares doubled", 2, 2));
                Strata.Add(new RiskStratum(quality, rate, lines, passes, "neighbours: stray share doubled, obscured halved", 0.5m, 2));
            }
        }

        Tallies = new RiskTally[Strata.Count];
        Parallel.For(0, Strata.Count, new ParallelOptions { MaxDegreeOfParallelism = 2 }, i => Tallies[i] = Strata[i].Run(Kits, Kits, (ulong)(i + 1)));
        string folder = Path.Combine(House.RootFolder(), "artifacts");
        Directory.CreateDirectory(folder);
        File.WriteAllText(Path.Combine(folder, "stated-risk.md"), ToMarkdown());
    }

    public int Kits { get; }

    public bool IsLong => Kits >= 60_000;

    internal List<RiskStratum> Strata { get; } = [];

    internal RiskTally[] Tallies { get; }

    /// <summary>1 % over all strata.</summary>
    public double Confidence => 1 - (0.01 / Strata.Count);

    private string ToMarkdown()
    {
        var text = new StringBuilder("| stratum | kits | wrong | share, upper bound | complete | wrong complete | there, open | not there, accounted | exact, at the worst corner |\n|---|---|---|---|---|---|---|---|---|\n");
        for (int i = 0; i < Tallies.Length; i++)
        {
            RiskTally tally = Tallies[i];
            text.Append(CultureInfo.InvariantCulture, $"| {Strata[i].Name} | {tally.Kits:N0} | {tally.WrongKits} | {(double)tally.WrongKits / tally.Kits:0.000000}, {RiskCalibrationTests.Upper(tally.WrongKits, tally.Kits, Confidence):0.000000} | ")
                .Append(CultureInfo.InvariantCulture, $"{100.0 * tally.CompleteKits / tally.Kits:0.0} % | {tally.WrongComplete} | {100.0 * tally.ThereOpen / tally.There:0.00} % | {tally.AbsentAccounted} of {tally.AbsentTools:N0} | {RiskCalibrationTests.ExactAbsent(Strata[i]):0.000000} |\n");
        }

        return text.ToString();
    }
}
