using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>The looks of one tag over several sessions, by pass and by antenna.</summary>
internal sealed class TagLooks
{
    private readonly List<SessionPass> passes = [];
    private readonly SortedDictionary<(string Station, byte Antenna), AntennaEvidence> antennas = [];
    private TagEvidence? strongest;

    public IReadOnlyList<SessionPass> Passes => passes;

    public DateTimeOffset? FirstSeen { get; private set; }

    public DateTimeOffset? LastSeen { get; private set; }

    /// <summary>Adds a usable session; without evidence its passes are silent.</summary>
    public void Add(ReadSession session, TagEvidence? evidence)
    {
        // The chip number is known for the tag in the session, not for each look: one session may hear a copy that another did not.
        bool hasTid = evidence is { Tids.Count: > 0 };
        IReadOnlyList<LookCell> cells = evidence?.Cells ?? [];
        foreach (ReadPass pass in session.Passes)
        {
            int looks = 0;
            foreach (LookCell cell in cells)
            {
                looks += cell.Pass == pass.Number ? cell.LookCount : 0;
            }

            passes.Add(new SessionPass(session, pass, looks, hasTid ? looks : 0));
        }

        foreach (LookCell cell in cells)
        {
            AddAntenna(session, cell, hasTid ? cell.LookCount : 0);
        }

        if (evidence is not null)
        {
            strongest = strongest?.Strongest is null || evidence.Strongest?.CentiDbm > strongest.Strongest?.CentiDbm ? evidence : strongest;
            FirstSeen = FirstSeen is null || evidence.FirstSeen < FirstSeen ? evidence.FirstSeen : FirstSeen;
            LastSeen = LastSeen is null || evidence.LastSeen > LastSeen ? evidence.LastSeen : LastSeen;
        }
    }

    /// <summary>The evidence for a presence policy.</summary>
    /// <param name="tag">The tag.</param>
    /// <param name="shortestPass">The shortest pass that is a view of its own.</param>
    /// <param name="history">What past sessions say, or null.</param>
    /// <param name="isExplainedElsewhere">True to leave every look out, because something else explains them all.</param>
    public PresenceEvidence ToEvidence(TagId tag, TimeSpan shortestPass, TagHistory? history, bool isExplainedElsewhere) => new()
    {
        Tag = tag,
        Passes = SeparatePasses.Of(passes.Select(pass => pass.ToTimedPass(isExplainedElsewhere)), shortestPass),
        Antennas = isExplainedElsewhere ? [] : [.. antennas.Values],
        Strongest = isExplainedElsewhere ? null : strongest?.Strongest,
        HasTid = !isExplainedElsewhere && passes.Any(static pass => pass.TidLooks > 0),
        History = history,
    };

    private void AddAntenna(ReadSession session, LookCell cell, int tidLooks)
    {
        bool degraded = session.Health.State == SessionState.Degraded;
        StationId station = session.Presentation.Station.Id;
        (string, byte) key = (station.Value, cell.Antenna.Number);
        antennas[key] = antennas.TryGetValue(key, out AntennaEvidence so)
            ? so with { IsDegraded = so.IsDegraded && degraded, LookCount = so.LookCount + cell.LookCount, TidLookCount = so.TidLookCount + tidLooks }
            : new AntennaEvidence(station, cell.Antenna, degraded, cell.LookCount) { TidLookCount = tidLooks };
    }
}
