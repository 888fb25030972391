using ToolLedger.Presence;
using ToolLedger.Reads;

namespace ToolLedger.Reconciliation;

/// <summary>One pass of a session with the looks it had of one tag, and those of them for which the chip number was reported.</summary>
/// <param name="Session">The session.</param>
/// <param name="Index">The place of the pass among those of the session.</param>
/// <param name="Heard">The looks.</param>
/// <param name="TidHeard">Those with a chip number.</param>
internal readonly record struct SessionPass(ReadSession Session, int Index, int Heard, int TidHeard)
{
    public ReadPass Pass => Session.Passes[Index];

    /// <summary>True to take the looks for those of a session of good health: what speaks against a tool does not lose force with the health of the session that says so.</summary>
    public bool IsHealthAside { get; init; }

    /// <summary>The looks that count: none of a session that cannot be used.</summary>
    public int Looks => IsHealthAside || Session.IsUsable ? Heard : 0;

    /// <summary>Those with a chip number.</summary>
    public int TidLooks => IsHealthAside || Session.IsUsable ? TidHeard : 0;

    public TimedPass ToTimedPass(bool withoutLooks) => new(Session.Presentation.Station.Id, Pass.From, Pass.To, ToEvidence(withoutLooks));

    public PassEvidence ToEvidence(bool withoutLooks) => new(Session.Id, Pass.Number, !IsHealthAside && Session.Health.State != SessionState.Valid, withoutLooks ? 0 : Looks, Pass.LookLimit)
    {
        TidLookCount = withoutLooks ? 0 : TidLooks,
        Station = Session.Presentation.Station.Id,
    };
}
