using System;
using System.Text.RegularExpressions;
using Spectre.Console;

namespace ShiftCloseout;

/// <summary>
/// Writes a report to standard output; on a terminal that wants it, the words of the conclusions stand out. The colours are told apart with
/// the common kinds of colour blindness (blue, orange, vermilion), and each kind has a shape of its own besides: plain, underlined, reversed.
/// The word itself never changes.
/// </summary>
internal static partial class StateColours
{
    private static readonly Style Settled = new(new Color(86, 180, 233));
    private static readonly Style Open = new(new Color(230, 159, 0), decoration: Decoration.Underline);
    private static readonly Style Difference = new(new Color(213, 94, 0), decoration: Decoration.Bold | Decoration.Invert);

    public static void Write(string text, ReportFormat format, HostConsole console)
    {
        if (!console.IsColourful || format != ReportFormat.Text)
        {
            console.Out.Write(text);
            return;
        }

        IAnsiConsole terminal = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = AnsiSupport.Yes,
            ColorSystem = ColorSystemSupport.EightBit,
            Out = new AnsiConsoleOutput(console.Out),
        });
        terminal.Profile.Width = 1000; // the report is already broken into lines
        int at = 0;
        foreach (ValueMatch word in StateWord().EnumerateMatches(text))
        {
            console.Out.Write(text.AsSpan(at, word.Index - at));
            string state = text.Substring(word.Index, word.Length);
            terminal.Write(new Text(state, StyleOf(state)));
            at = word.Index + word.Length;
        }

        console.Out.Write(text.AsSpan(at));
    }

    private static Style StyleOf(string state) => state switch
    {
        "COMPLETE" or "VALID" or "CURRENT" or "READ" or "SIGHTED" or "COUNTED" or "RECORD" or "SATISFIED" or "SETTLED" => Settled,
        "WEAK" or "NOT READ" or "NOT ASSESSED" or "NOT COUNTED" or "OPEN" or "DEGRADED" or "DUE SOON" or "UNKNOWN" or "UNEXPECTED" or "OPENED" => Open,
        _ => Difference,
    };

    // What follows a "not" of an earlier line is no word of its own: without a colour it says too little, with the other one it would lie.
    [GeneratedRegex(@"(?<!\b(NOT|NO|NO\s+VALID)\s+)\b(NO VALID READ|NOT SATISFIED|SATISFIED|ON NO LIST|OPENED|SETTLED|NOT READ|NOT ASSESSED|NOT COUNTED|COMPLETE|INVALID|VALID|CURRENT|READ|SIGHTED|COUNTED|RECORD|WEAK|OPEN|DEGRADED|DUE SOON|PARTIAL|CONFLICT|DISCREPANT|OVERDUE|UNEXPECTED|UNKNOWN)\b", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex StateWord();
}
