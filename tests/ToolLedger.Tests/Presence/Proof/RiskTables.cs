using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using ToolLedger.Statistics;

namespace ToolLedger.Tests.Presence.Proof;

/// <summary>The tables of docs/presence-calibration.md: a row for each kind of kit, a column for each truth.</summary>
internal static class RiskTables
{
    public static IEnumerable<string> All(RiskRun run) => [Exact(run.Strata), Kits(run), AbsentTools(run), Open(run), BeyondTheBox(run)];

    /// <summary>The table of docs/presence.md: a row for each quality of tags.</summary>
    public static string Summary(RiskRun run)
    {
        StringBuilder text = Header("tags", "kits wrong, as modelled: most (upper bound)", "at a corner: most (lower bound)", "exact, worst corner", "there and open, as modelled", "there and open, wet", "complete kits, as modelled");
        foreach (IGrouping<string, (RiskStratum Stratum, RiskTally Tally)> group in run.All.GroupBy(static pair => pair.Stratum.Quality, StringComparer.Ordinal))
        {
            RiskTally[] own = [.. group.Where(static pair => pair.Stratum.Truth.IsOwn).Select(static pair => pair.Tally)], wet = [.. group.Where(static pair => pair.Stratum.Truth.Obscured > 1).Select(static pair => pair.Tally)];
            RiskTally most = own.MaxBy(static tally => tally.WrongKits)!, corner = group.Where(static pair => !pair.Stratum.Truth.IsOwn).Select(static pair => pair.Tally).MaxBy(static tally => tally.WrongKits)!;
            Row(
                text, group.Key, $"{Parts((double)most.WrongKits / most.Kits)} ({Parts(BinomialDistribution.UpperLimit(most.WrongKits, most.Kits, run.Confidence))})",
                $"{Parts((double)corner.WrongKits / corner.Kits)} ({Parts(BinomialDistribution.LowerLimit(corner.WrongKits, corner.Kits, run.Confidence))})", Parts(group.Max(static pair => pair.Stratum.KitRisk)),
                Range(own, static tally => (double)tally.ThereOpen / tally.There), Range(wet, static tally => (double)tally.ThereOpen / tally.There), Range(own, static tally => (double)tally.CompleteKits / tally.Kits));
        }

        return text.ToString();
    }

    /// <summary>What needs no chance: the same figures on every run.</summary>
    public static string Exact(IReadOnlyList<RiskStratum> strata)
    {
        StringBuilder text = Header("kits", "cut of a line", "accounted though absent, worst corner", "kits wrong, as modelled", "kits wrong, worst corner", "open though there, as modelled", "open, wet (obscured doubled)");
        foreach (RiskStratum[] row in Rows(strata))
        {
            Row(text, row[0].Row, Share(row[0].Cut), Parts(row[0].WorstChance), Parts(row[0].KitRisk), Parts(row.Max(static stratum => stratum.KitRisk)),
                Percent(1 - row[0].ChanceAccounted(isThere: true)), Percent(1 - row[^1].ChanceAccounted(isThere: true)));
        }

        return text.ToString();
    }

    private static string Kits(RiskRun run) => ByTruth(run, tally => Bounded(tally.WrongKits, tally.Kits, run.Confidence));

    private static string AbsentTools(RiskRun run) => ByTruth(run, tally => Bounded(tally.AbsentAccounted, tally.AbsentTools, run.Confidence));

    private static string Open(RiskRun run) => ByTruth(run, static tally =>
        $"{Percent((double)tally.ThereOpen / tally.There)}; {Percent((double)tally.CompleteKits / tally.Kits)}; {tally.WrongComplete.ToString(CultureInfo.InvariantCulture)}");

    private static string BeyondTheBox(RiskRun run)
    {
        StringBuilder text = Header("kits and truth", "kits wrong", "kits wrong, exact", "absent tools accounted for", "open though there");
        for (int i = 0; i < run.Beyond.Count; i++)
        {
            RiskTally tally = run.BeyondTallies[i];
            Row(text, run.Beyond[i].Name, Bounded(tally.WrongKits, tally.Kits, run.Confidence), Parts(run.Beyond[i].KitRisk), Bounded(tally.AbsentAccounted, tally.AbsentTools, run.Confidence),
                Percent((double)tally.ThereOpen / tally.There));
        }

        return text.ToString();
    }

    private static string ByTruth(RiskRun run, Func<RiskTally, string> cell)
    {
        StringBuilder text = Header(["kits", .. RiskTruth.Box.Select(static truth => truth.Name)]);
        int at = 0;
        foreach (RiskStratum[] row in Rows(run.Strata))
        {
            Row(text, [row[0].Row, .. run.Tallies[at..(at + row.Length)].Select(cell)]);
            at += row.Length;
        }

        return text.ToString();
    }

    private static IEnumerable<RiskStratum[]> Rows(IReadOnlyList<RiskStratum> strata) => strata.Chunk(RiskTruth.Box.Length);

    private static string Range(RiskTally[] tallies, Func<RiskTally, double> share) => $"{Percent(tallies.Min(share))} to {Percent(tallies.Max(share))}";

    private static StringBuilder Header(params string[] names)
    {
        var text = new StringBuilder();
        Row(text, names);
        return text.Append('|').Insert(text.Length, "---|", names.Length).Append('\n');
    }

    private static void Row(StringBuilder text, params string[] cells) => text.Append("| ").AppendJoin(" | ", cells).Append(" |\n");

    /// <summary>Cases in 100,000, and the one-sided bounds of Clopper and Pearson.</summary>
    private static string Bounded(int events, int trials, double confidence) =>
        $"{Parts((double)events / trials)} ({Parts(BinomialDistribution.LowerLimit(events, trials, confidence))} to {Parts(BinomialDistribution.UpperLimit(events, trials, confidence))})";

    private static string Parts(double share) => (100_000 * share).ToString("0.0", CultureInfo.InvariantCulture);

    private static string Percent(double share) => (100 * share).ToString("0.0", CultureInfo.InvariantCulture) + " %";

    private static string Share(double share) => share == 0 ? "none" : (100 * share).ToString("0.0###", CultureInfo.InvariantCulture) + " %";
}
