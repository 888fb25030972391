using System.Runtime.InteropServices;
using ToolLedger.Statistics;

namespace ToolLedger.Presence;

/// <summary>What the looks of a tag prove at a stated risk, in figures.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
[StructLayout(LayoutKind.Auto)]
public readonly record struct PresenceDecision
{
    internal PresenceDecision(PresenceState state, int prior, EvidenceScore evidence, int threshold)
    {
        State = state;
        Prior = prior;
        Evidence = evidence;
        Threshold = threshold;
    }

    /// <summary>Accounted where the risk is within the cut; weak with at least one read otherwise; not read without one, whatever the risk.</summary>
    public PresenceState State { get; }

    /// <summary>The natural logarithm of the odds that the tool is there: bounded, at the cautious corner of the robustness box, rounded down to 1/256 a term.</summary>
    public double LogOdds => (double)Score / PassScores.StepsPerUnit;

    /// <summary>The probability that the tool is not there, by <see cref="LogOdds"/>; above 0, below 1.</summary>
    public double Risk => RiskOf(Score);

    /// <summary>The largest risk at which a line of such a kit with such passes is accounted; 0 where no number of reads in them suffices.</summary>
    public double Cut => Threshold == int.MaxValue ? 0 : RiskOf(Prior + Threshold);

    internal int Prior { get; }

    internal EvidenceScore Evidence { get; }

    internal int Threshold { get; }

    internal int Score => Prior + Evidence.Least;

    internal static double RiskOf(int score) => 1 / (1 + Elementary.Exp((double)score / PassScores.StepsPerUnit));
}
