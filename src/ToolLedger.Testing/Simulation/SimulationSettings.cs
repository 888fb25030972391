using System;
using System.Runtime.CompilerServices;

namespace ToolLedger.Testing.Simulation;

/// <summary>How tags and the reader behave in a simulated session. Immutable and thread-safe.</summary>
/// <remarks>
/// Each default names the published reads it was computed from; "ours" marks a value for which no open data was found. In particular
/// no open data set measures tools, drawers or metal: the share of reads lost to them is for the user to set, from trials.
/// The sources: published walks of a handheld reader past 27 known panels with 915 tags; published logs of stream antennas with fixed
/// marker tags; published laboratory logs of fixed readers with one to four antennas; published readings of 58 fixed tags.
/// </remarks>
public sealed class SimulationSettings
{
    /// <summary>Every setting at its default.</summary>
    public static SimulationSettings Default { get; } = new();

    /// <summary>Mean number of reports of one present tag, not obscured, in one pass.</summary>
    /// <value>
    /// Reports; 0 to 100,000. The default is 4.9: published walks past known panels, 59 to 85 s each, read a tag 4.9 times on average, and
    /// 5.5 % of the tags never. The rate of a tag in a pass is the sum of three exponential parts, one of which stays with the tag while
    /// two are drawn again in each pass. That gives 5.5 % never read, 10.2 % read exactly once (published: 9.7 to 11.2 %), 8.9 % missed
    /// again after a miss (published: 9.5 %) and 0.05 % unseen after three passes (published: 0.05 %).
    /// A bag that stands on a station is read more: published readings of fixed tags came 1.38 s apart (median).
    /// </value>
    public double ReportsPerPassMean { get; init => field = Range(value, 0, 100_000); } = 4.9;

    /// <summary>What is left of the report rate of an obscured tag.</summary>
    /// <value>Factor; 0 to 1. The default is 0.15 (ours).</value>
    public double ObscuredFactor { get; init => field = Share(value); } = 0.15;

    /// <summary>How much weaker an obscured tag answers.</summary>
    /// <value>Decibels; 0 to 60. The default is 15 (ours).</value>
    public double ObscuredLossDb { get; init => field = Range(value, 0, 60); } = 15;

    /// <summary>Share of the present tags that are obscured by chance, beside those the scenario names.</summary>
    /// <value>0 to 1. The default is 0 (ours). A tool that is not there can be drawn too; that changes nothing.</value>
    public double ObscuredShare { get; init => field = Share(value); }

    /// <summary>What is left of the report rate of a tag in a neighbouring kit.</summary>
    /// <value>
    /// Factor; 0 to 1. The default is 0.6: in published walks past known panels the number of reads hardly separated a panel's own tags
    /// from its neighbours' (area under the ROC curve 0.63 to 0.68).
    /// </value>
    public double NeighbourFactor { get; init => field = Share(value); } = 0.6;

    /// <summary>How much weaker a neighbour's tag answers.</summary>
    /// <value>
    /// Decibels; 0 to 60. The default is 1.5: in published walks past known panels the strongest reading hardly separated a panel's own tags
    /// from its neighbours' (area under the ROC curve 0.59 to 0.70).
    /// </value>
    public double NeighbourLossDb { get; init => field = Range(value, 0, 60); } = 1.5;

    /// <summary>Share of the tags that only one antenna can see.</summary>
    /// <value>0 to 1. The default is 0.1 (ours).</value>
    public double OneAntennaShare { get; init => field = Share(value); } = 0.1;

    /// <summary>Share of the sessions with foreign tags, where the scenario does not say how many there are.</summary>
    /// <value>0 to 1. The default is 0.02: published laboratory logs held foreign tags in 8 of 402 files of one tag each.</value>
    public double StraySessionShare { get; init => field = Share(value); } = 0.02;

    /// <summary>The most foreign tags drawn for a session that has any; they are 1 to this number, each equally likely.</summary>
    /// <value>Tags; 1 to 1000. The default is 5: the same logs held one to five.</value>
    public int StrayCountMax { get; init => field = (int)Range(value, 1, 1000); } = 5;

    /// <summary>Mean number of reports of one foreign tag beyond the first; it is always reported once.</summary>
    /// <value>Reports; 0 to 100,000. The default is 1 (ours; in the same logs foreign tags made 0.04 to 1.1 % of the rows).</value>
    public double StrayReportsMean { get; init => field = Range(value, 0, 100_000); } = 1;

    /// <summary>Time between two attempts to read a control tag, on each antenna that has it in its field.</summary>
    /// <value>10 ms to 1 hour. The default is 1 s (ours; the published marker tags fire once in 3 s to 7 minutes).</value>
    public TimeSpan ControlTagInterval
    {
        get;
        init => field = Range(value, TimeSpan.FromMilliseconds(10), TimeSpan.FromHours(1));
    } = TimeSpan.FromSeconds(1);

    /// <summary>Share of the attempts at a control tag that give no report.</summary>
    /// <value>0 to 1. The default is 0.095: in the published log of a stream antenna 9.5 % of the marker tag's slots are empty outside the outages.</value>
    public double ControlTagMissShare { get; init => field = Share(value); } = 0.095;

    /// <summary>Share of the reports that arrive late, after newer ones.</summary>
    /// <value>0 to 1. The default is 0.2: in published logs of one reader with four antennas 12 to 29 % of neighbouring rows step back in time.</value>
    public double LateReportShare { get; init => field = Share(value); } = 0.2;

    /// <summary>Shortest delay of a late report.</summary>
    /// <value>0 to 1 hour. The default is 0.08 s: the published steps back are usually 0.08 to 0.18 s.</value>
    public TimeSpan LateReportDelayMin { get; init => field = Delay(value); } = TimeSpan.FromSeconds(0.08);

    /// <summary>Longest delay of a late report; taken as the shortest one if it is below that.</summary>
    /// <value>0 to 1 hour. The default is 0.18 s: the published steps back are usually 0.08 to 0.18 s, at most 1.9 s in all folders but one.</value>
    public TimeSpan LateReportDelayMax { get; init => field = Delay(value); } = TimeSpan.FromSeconds(0.18);

    /// <summary>Share of the reports that are delivered a second time, unchanged.</summary>
    /// <value>0 to 1. The default is 0.04: 4 % of the rows in one of 23 folders of published laboratory logs; none in the other 22.</value>
    public double RepeatShare { get; init => field = Share(value); } = 0.04;

    /// <summary>Longest time after which a report is delivered again.</summary>
    /// <value>0 to 1 hour. The default is 2 s (ours).</value>
    public TimeSpan RepeatDelayMax { get; init => field = Delay(value); } = TimeSpan.FromSeconds(2);

    /// <summary>Mean strength of the answer of a tag that is not obscured.</summary>
    /// <value>dBm; -120 to 0. The default is -58 (ours).</value>
    public double StrengthMeanDbm { get; init => field = Range(value, -120, 0); } = -58;

    /// <summary>Standard deviation of the strength between tags.</summary>
    /// <value>Decibels; 0 to 30. The default is 3 (ours).</value>
    public double StrengthTagSpreadDb { get; init => field = Range(value, 0, 30); } = 3;

    /// <summary>Standard deviation of the strength between reports of one tag.</summary>
    /// <value>Decibels; 0 to 30. The default is 2 (ours).</value>
    public double StrengthReportSpreadDb { get; init => field = Range(value, 0, 30); } = 2;

    /// <summary>Whether the reader reports the tag's TID where the tag has one on record.</summary>
    /// <value>The default is <see langword="false"/>: many readers report the EPC only.</value>
    public bool ReportsTid { get; init; }

    private static double Share(double value, [CallerMemberName] string name = "") => Range(value, 0, 1, name);

    private static TimeSpan Delay(TimeSpan value, [CallerMemberName] string name = "") => Range(value, TimeSpan.Zero, TimeSpan.FromHours(1), name);

    private static T Range<T>(T value, T low, T high, [CallerMemberName] string name = "")
        where T : IComparable<T> =>
        value.CompareTo(low) >= 0 && value.CompareTo(high) <= 0 ? value
            : throw new ArgumentOutOfRangeException(name, value, $"{name} must be {low} to {high}.");
}
