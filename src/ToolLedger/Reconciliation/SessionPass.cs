using ToolLedger.Presence;
using ToolLedger.Reads;

namespace ToolLedger.Reconciliation;

/// <summary>One pass of a session with the looks it had of one tag, and those of them for which the chip number was reported.</summary>
/// <param name="Session">The session.</param>
/// <param name="Index">The place of the pass among those of the session.</param>
/// <param name="Looks">The looks.</param>
/// <param name="TidLooks">Those with a chip number.</param>
internal readonly record struct SessionPass(ReadSession Session, int Index, int Looks, int TidLooks)
{
    public ReadPass Pass => Session.Passes[Index];

    public TimedPass ToTimedPass(bool withoutLooks) => new(Session.Presentation.Station.Id, Pass.From, Pass.To, ToEvidence(withoutLooks));

    public PassEvidence ToEvidence(bool withoutLooks) => new(Session.Id, Pass.Number, Session.Health.State != SessionState.Valid, withoutLooks ? 0 : Looks, Pass.LookLimit)
    {
        TidLookCount = withoutLooks ? 0 : TidLooks,
        Station = Session.Presentation.Station.Id,
    };
}
