using System;
using System.Collections.Generic;

namespace ToolLedger.Reads;

/// <summary>The losses of a session: for each kind and antenna the earliest, and how many were reported.</summary>
internal sealed class LossTally
{
    private readonly SortedDictionary<(SessionLoss Loss, AntennaPort Antenna), (DateTimeOffset First, long Count)> _byKind = [];

    internal IEnumerable<(ReportedLoss First, long Count)> All
    {
        get
        {
            foreach (var (kind, tally) in _byKind)
            {
                yield return (new ReportedLoss(kind.Loss, tally.First, kind.Antenna), tally.Count);
            }
        }
    }

    internal void Add(in ReportedLoss loss)
    {
        var key = (loss.Loss, loss.Antenna);
        _byKind[key] = _byKind.TryGetValue(key, out var tally)
            ? (loss.At < tally.First ? loss.At : tally.First, tally.Count + 1)
            : (loss.At, 1);
    }
}
