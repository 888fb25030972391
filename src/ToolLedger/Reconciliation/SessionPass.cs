using ToolLedger.Presence;
using ToolLedger.Reads;

namespace ToolLedger.Reconciliation;

/// <summary>One pass of a session with the looks it had of one tag, and those of them for which the chip number was reported.</summary>
internal readonly record struct SessionPass(ReadSession Session, ReadPass Pass, int Looks, int TidLooks)
{
    public TimedPass ToTimedPass(bool withoutLooks) => new(Session.Presentation.Station.Id, Pass.From, Pass.To, ToEvidence(withoutLooks));

    public PassEvidence ToEvidence(bool withoutLooks) => new(Session.Id, Pass.Number, Session.Health.State == SessionState.Degraded, withoutLooks ? 0 : Looks, Pass.LookLimit)
    {
        TidLookCount = withoutLooks ? 0 : TidLooks,
    };
}
