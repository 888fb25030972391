using System.Globalization;
using ToolLedger.Records;

namespace ToolLedger.Presence;

/// <summary>The sentence of each term of a risk.</summary>
internal static class TermSentences
{
    internal static Reason Of(PresenceTerm term)
    {
        (string, string) by = ("by", RiskWords.Factor(term.LogOdds));
        (string, string) looks = ("looks", Text(term.Looks)), pass = ("pass", Text(term.Pass)), session = ("session", term.Session.Value ?? "");
        return term.Kind switch
        {
            PresenceTermKind.Prior => new Reason(PresenceReasons.TermPrior, ("odds", RiskWords.Odds(term.LogOdds))),
            PresenceTermKind.Read => new Reason(PresenceReasons.TermRead, by),
            PresenceTermKind.Silence => new Reason(PresenceReasons.TermSilence, by, looks),
            PresenceTermKind.ReadPass => new Reason(
                term.IsDegraded ? PresenceReasons.TermDegradedPass : PresenceReasons.TermReadPass, by, ("reads", Text(term.Reads)), looks, pass, session),
            _ => new Reason(term.IsBounded ? PresenceReasons.TermBoundedPass : PresenceReasons.TermSilentPass, by, looks, pass, session),
        };
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
