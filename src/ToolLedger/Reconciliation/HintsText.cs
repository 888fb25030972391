using System;
using System.Globalization;
using System.Linq;
using System.Text;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>A stable text of the hints handed to a reconciliation, so that its digest covers them too.</summary>
internal static class HintsText
{
    public static Digest DigestOf(ReconciliationInput input)
    {
        var text = new StringBuilder();
        foreach (var (tag, history) in input.History.OrderBy(static pair => pair.Key))
        {
            text.Append(CultureInfo.InvariantCulture, $"history {tag} {history.SessionsRead}/{history.SessionsPresented} {history.StrengthBaseline?.CentiDbm}");
            text.Append(history.FadingSum == 0 ? "\n" : string.Create(CultureInfo.InvariantCulture, $" fading {history.FadingSum}\n"));
        }

        foreach (var note in input.ProximityNotes.OrderBy(static note => note.Tag).ThenBy(static note => note.FirstSeen).ThenBy(static note => note.Station.Value, StringComparer.Ordinal))
        {
            text.Append(CultureInfo.InvariantCulture, $"note {note.Tag} {note.FirstSeen.UtcTicks} {note.LastSeen.UtcTicks} {note.LookCount} {note.Station}\n");
        }

        return Digest.Of(Encoding.UTF8.GetBytes(text.ToString()));
    }

    /// <summary>The absent shares that the caller stated, in order of the tools.</summary>
    public static Digest DigestOfShares(ReconciliationInput input)
    {
        var text = new StringBuilder();
        foreach (var (tool, share) in input.AbsentShares.OrderBy(static pair => pair.Key.Value, StringComparer.Ordinal))
        {
            text.Append(CultureInfo.InvariantCulture, $"absent {tool.Value} {share:0.#########}\n");
        }

        return Digest.Of(Encoding.UTF8.GetBytes(text.ToString()));
    }
}
