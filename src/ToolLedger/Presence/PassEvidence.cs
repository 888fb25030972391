using ToolLedger.Reads;

namespace ToolLedger.Presence;

/// <summary>What one pass of one usable session says about one tag. A silent pass is evidence too and has zero looks.</summary>
/// <param name="Session">The session.</param>
/// <param name="Pass">Pass number within the session, from 1.</param>
/// <param name="IsDegraded">True where the session's health was degraded.</param>
/// <param name="LookCount">Distinct looks kept (pass x antenna x time slot), 0 or more; saturates at the session policy's limit per antenna.</param>
/// <param name="LookLimit">Looks the pass offered: antennas x time slots, 0 or more.</param>
public readonly record struct PassEvidence(SessionId Session, int Pass, bool IsDegraded, int LookCount, long LookLimit)
{
    /// <summary>Those of the looks that a session of good health shows by itself. It differs from all or none only where passes of several sessions overlap and were joined.</summary>
    /// <value>0 to <see cref="LookCount"/>. The default is all of them, or none where the session was degraded.</value>
    public int ValidLookCount { get; init; } = IsDegraded ? 0 : LookCount;

    /// <summary>Those of the looks that are of a session in which the tag's chip number (TID) was reported, 0 to <see cref="LookCount"/>. A reader
    /// reports the chip number now and then, not at every look, so it is known for a session and not for a look.</summary>
    public int TidLookCount { get; init; }

    /// <summary>The station, for a policy that knows how tags answer there; empty (the default) where not stated.</summary>
    public StationId Station { get; init; }

    /// <summary>True for the passes from the start of the last session of good health on. Before it the tool may have been taken out, so a policy with a stated risk asks that these passes
    /// suffice by themselves, if there are any; the default is false.</summary>
    public bool IsLast { get; init; }

    /// <summary>Passes of one number had the same surroundings; see <see cref="PassLooks.Surroundings"/>. The default is 0.</summary>
    public int Surroundings { get; init; }
}
