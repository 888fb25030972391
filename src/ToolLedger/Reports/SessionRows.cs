using System.Collections.Generic;
using System.Linq;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>The sessions under the first question: health, and what makes the reads of a session worth less than they look.</summary>
internal sealed class SessionRows(ReportVoice voice)
{
    private const int KitsShown = 5;

    internal ReportRow Of(SessionTally tally)
    {
        IEnumerable<Reason> nearby = tally.Findings.Select(static finding => finding.Reason).Where(static reason => reason.Kind == ReconciliationReasons.NeighbourNearby);
        return Row(tally.Session, [.. tally.Session.Health.Reasons, .. Outside(tally.Session), .. nearby]);
    }

    /// <summary>A session of other kits: a wrong kit on its sheet would hide it altogether.</summary>
    internal ReportRow OfOtherKits(ReadSession session)
    {
        IReadOnlyList<Kits.KitId> kits = session.Presentation.Kits;
        var presents = new Reason(
            ReportSentences.SessionOfOthers,
            ("count", ReportVoice.Text(kits.Count)),
            ("kits", voice.List(kits.Select(static kit => kit.Value), kits.Count, KitsShown)));
        return Row(session, [presents, .. session.Health.Reasons, .. Outside(session)]);
    }

    private ReportRow Row(ReadSession session, IReadOnlyList<Reason> reasons)
    {
        string alive = string.Join("+", session.LiveAntennas.Select(static antenna => ReportVoice.Text(antenna.Number)));
        string text = voice.Say(
            ReportSentences.Session,
            ("session", session.Id.Value),
            ("station", session.Presentation.Station.Id.Value),
            ("from", voice.Time(session.From)),
            ("to", voice.On(session.From).Time(session.To)),
            ("passes", ReportVoice.Text(session.Passes.Count)),
            ("antennas", alive.Length > 0 ? alive : "-"),
            ("reads", ReportVoice.Text(session.ReadCount)));
        string why = voice.Join(reasons);
        return new ReportRow("", StatusWords.Print(session.Health.State), why.Length > 0 ? $"{text}. {ReportVoice.Sentence(why)}" : text + ".");
    }

    /// <summary>A session of which no read was evidence: the clock, the sheet or the list of antennas is wrong, rather than the bag empty.</summary>
    private static IEnumerable<Reason> Outside(ReadSession session)
    {
        if (session.AcceptedCount > 0 || session.OutsideCount == 0 || session.OverLimitCount > 0)
        {
            yield break;
        }

        ReasonKind kind = session.UnlistedCount == 0 ? ReportSentences.AllOutside
            : session.UnlistedCount == session.OutsideCount ? ReportSentences.AllUnlisted
            : ReportSentences.AllOutsideOrUnlisted;
        yield return new Reason(kind, ("count", ReportVoice.Text(session.ReadCount)));
    }
}
