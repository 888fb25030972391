using System;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Statistics;

namespace ToolLedger.Reconciliation;

/// <summary>What sessions teach of the tags of one mounting class at one station, and what those were like that teach no model since tags were silent in them.</summary>
internal sealed class StationTally
{
    // One-sided, as the bounds of the learner are.
    private const double Confidence = 0.95;

    private int silentSessions, silentPassesThere, silentPassesRead;
    private bool hasLessons;

    public DetectionLearner Learner { get; } = new();

    /// <summary>Takes in the passes of one tag.</summary>
    public void Add(ReadOnlySpan<PassLooks> passes, bool isThere)
    {
        hasLessons = true;
        if (isThere)
        {
            Learner.AddThere(passes);
        }
        else
        {
            Learner.AddAbsent(passes);
        }
    }

    /// <summary>Counts the passes of one tag that was there in a session that is not learned from.</summary>
    public void CountSilentDay(ReadOnlySpan<PassLooks> passes)
    {
        foreach (PassLooks pass in passes)
        {
            silentPassesThere += pass.Looks > 0 ? 1 : 0;
            silentPassesRead += pass is { Looks: > 0, Reads: > 0 } ? 1 : 0;
        }
    }

    public void CountSilentSession() => silentSessions++;

    /// <summary>What was learned; null where no session taught a model.</summary>
    public LearnedStation? Learned(StationId station, string? mounting, DetectionModel shrinkTo, int shrinkPasses)
    {
        if (!hasLessons)
        {
            return null;
        }

        LearnedDetection learned = Learner.Learn(shrinkTo, shrinkPasses);
        int there = learned.PassesThere + silentPassesThere;
        return new LearnedStation(station, mounting, there == learned.PassesThere ? learned : learned with
        {
            ReadShareAtLeast = BinomialDistribution.LowerLimit(learned.PassesRead + silentPassesRead, there, Confidence),
        })
        {
            SilentSessionsLeftOut = silentSessions,
            SilentPassesThere = silentPassesThere,
            SilentPassesRead = silentPassesRead,
        };
    }
}
