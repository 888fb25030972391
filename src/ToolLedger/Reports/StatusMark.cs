using System;
using System.Collections.Frozen;
using System.Collections.Generic;
using System.Linq;
using System.Text;
using ToolLedger.Calibration;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;

namespace ToolLedger.Reports;

/// <summary>The small shape that stands before a status word in HTML. The word says everything; shape and colour only let the eye find it.</summary>
internal static class StatusMark
{
    /// <summary>The shapes, each drawn once: a tick, a triangle, a square on its tip and a ring.</summary>
    internal const string Shapes = """
        <svg class="defs" width="0" height="0" aria-hidden="true" focusable="false"><symbol id="mark-ok" viewBox="0 0 12 12"><path d="M1.5 6.5l3 3.2 6-7.4" fill="none" stroke="currentColor" stroke-width="2.2"/></symbol><symbol id="mark-look" viewBox="0 0 12 12"><path d="M6 1l5.4 10H.6z" fill="none" stroke="currentColor" stroke-width="1.8"/></symbol><symbol id="mark-act" viewBox="0 0 12 12"><path d="M6 0l6 6-6 6-6-6z" fill="currentColor"/></symbol><symbol id="mark-note" viewBox="0 0 12 12"><circle cx="6" cy="6" r="4" fill="none" stroke="currentColor" stroke-width="1.8"/></symbol></svg>
        """;

    private static readonly FrozenDictionary<string, string> Classes = Named().ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>The class of a status: "ok", "look", "act", or "note" for a word that is no status.</summary>
    internal static string ClassOf(string word)
    {
        int comma = word.IndexOf(',', StringComparison.Ordinal);
        return Classes.GetValueOrDefault(comma < 0 ? word : word[..comma], "note");
    }

    /// <summary>Appends a status word with its shape.</summary>
    internal static StringBuilder PutStatus(this StringBuilder page, string word)
    {
        string name = ClassOf(word);
        return page.Append("<span class=\"st ").Append(name).Append("\"><svg class=\"g\" width=\"12\" height=\"12\" aria-hidden=\"true\" focusable=\"false\"><use href=\"#mark-")
            .Append(name).Append("\"/></svg>").Put(word).Append("</span>");
    }

    private static Dictionary<string, string> Named()
    {
        var names = new Dictionary<string, string>(StringComparer.Ordinal);
        void Name(string name, params IEnumerable<string> words)
        {
            foreach (string word in words)
            {
                names[word] = name;
            }
        }

        Name("ok", Enum.GetValues<AccountingBasis>().Where(static basis => basis != AccountingBasis.None).Select(StatusWords.Print));
        Name(
            "ok",
            StatusWords.Print(LineState.Accounted),
            StatusWords.Print(KitState.Complete),
            StatusWords.Print(SessionState.Valid),
            StatusWords.Print(CalibrationState.Current),
            "SATISFIED");
        Name(
            "look",
            StatusWords.Print(LineState.Weak),
            StatusWords.Print(LineState.NotRead),
            StatusWords.Print(LineState.NotAssessed),
            StatusWords.Print(KitState.Open),
            StatusWords.Print(SessionState.Degraded),
            StatusWords.Print(CalibrationState.DueSoon),
            StatusWords.Print(CalibrationState.Limited),
            StatusWords.Print(CalibrationState.Unknown),
            StatusWords.NotCounted,
            StatusWords.UnlistedAntenna,
            "EXPOSED");
        Name(
            "act",
            StatusWords.Print(LineState.Partial),
            StatusWords.Print(LineState.Conflict),
            StatusWords.Print(KitState.Discrepant),
            StatusWords.Print(KitState.NoValidRead),
            StatusWords.Print(SessionState.Invalid),
            StatusWords.Print(CalibrationState.Overdue),
            StatusWords.Print(CalibrationState.Rejected),
            StatusWords.Print(CalibrationState.Suspended),
            StatusWords.Print(CalibrationState.Inactive),
            StatusWords.OnNoList,
            StatusWords.InQuestion,
            "NOT SATISFIED",
            "HELD");
        return names;
    }
}
