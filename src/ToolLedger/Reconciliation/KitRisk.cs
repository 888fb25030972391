using System;
using System.Collections.Generic;
using System.Runtime.InteropServices;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Statistics;

namespace ToolLedger.Reconciliation;

/// <summary>The risk of signing a kit: that at least one line, accounted for by reads alone, is not there. Lines count as independent once the session has shown its antennas.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class KitRisk
{
    private readonly double[] risks;

    private KitRisk(double[] risks, double limit, string? heaviest, double withoutHeaviest)
    {
        this.risks = risks;
        Limit = limit;
        HeaviestLine = heaviest;
        JointWithoutHeaviest = withoutHeaviest;
        Joint = PoissonBinomial.Any(risks);
    }

    /// <summary>The probability that at least one is not there: exact, by the Poisson-binomial distribution.</summary>
    public double Joint { get; }

    /// <summary>The limit of the policy.</summary>
    public double Limit { get; }

    /// <summary>True where <see cref="Joint"/> is within <see cref="Limit"/>.</summary>
    public bool IsWithinLimit => Joint <= Limit;

    /// <summary>The lines that rest on reads alone.</summary>
    public int LineCount => risks.Length;

    /// <summary>The label of the line whose sighting lowers the risk most; null where no line rests on reads alone.</summary>
    public string? HeaviestLine { get; }

    /// <summary>The probability that is left once that line is sighted.</summary>
    public double JointWithoutHeaviest { get; }

    /// <summary>The probability that exactly so many of them are not there.</summary>
    /// <param name="count">0 to <see cref="LineCount"/>.</param>
    /// <returns>0 to 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public double ChanceOf(int count)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(count);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, risks.Length);
        double[] exactly = new double[risks.Length + 1];
        PoissonBinomial.Exactly(risks, exactly);
        return exactly[count];
    }

    /// <summary>For example "risk 1 in 25,000, at most 1 in 1,000, of 12 lines", or "risk 1 in 200, over the limit of 1 in 1,000, of 12 lines".</summary>
    /// <returns>One line of English text.</returns>
    public override string ToString() => FormattableString.Invariant(
        $"risk {RiskWords.Chance(Joint)}, {(IsWithinLimit ? "at most" : "over the limit of")} {RiskWords.Chance(Limit)}, of {LineCount} {(LineCount == 1 ? "line" : "lines")}");

    internal static KitRisk? Of(PresencePolicy policy, IReadOnlyList<LineConclusion> lines)
    {
        if (policy is not StatedRiskPolicy stated)
        {
            return null;
        }

        var found = new List<double>(lines.Count);
        int heaviest = -1;
        string? label = null;
        foreach (LineConclusion line in lines)
        {
            if (line is { Basis: AccountingBasis.Read, Evidence.Risk: { } risk })
            {
                if (heaviest < 0 || risk.Decision.Risk > found[heaviest])
                {
                    (heaviest, label) = (found.Count, line.Label);
                }

                found.Add(risk.Decision.Risk);
            }
        }

        return Of(stated, found, heaviest, label);
    }

    /// <summary>The same of a plain kit, none of whose lines is inside another.</summary>
    internal static KitRisk? Of(PresencePolicy policy, KitManifest manifest, ReadOnlySpan<PlainLine> lines)
    {
        if (policy is not StatedRiskPolicy stated)
        {
            return null;
        }

        var found = new List<double>(lines.Length);
        int heaviest = -1, heaviestLine = 0;
        for (int i = 0; i < lines.Length; i++)
        {
            if (lines[i] is { State: LineState.Accounted, Risk: { } risk })
            {
                if (heaviest < 0 || risk > found[heaviest])
                {
                    (heaviest, heaviestLine) = (found.Count, i);
                }

                found.Add(risk);
            }
        }

        return Of(stated, found, heaviest, heaviest < 0 ? null : LineConclusion.Text(manifest.Lines[heaviestLine].Number));
    }

    private static KitRisk Of(StatedRiskPolicy policy, List<double> risks, int heaviest, string? label)
    {
        double[] all = [.. risks];
        if (heaviest >= 0)
        {
            risks.RemoveAt(heaviest);
        }

        return new KitRisk(all, (double)policy.KitRiskLimit, label, PoissonBinomial.Any(CollectionsMarshal.AsSpan(risks)));
    }
}
