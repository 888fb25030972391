using System.Text;
using ToolLedger.Reports;

namespace ShiftCloseout;

/// <summary>Writes the report to standard output or, whole or not at all, to a file.</summary>
internal static class ReportOutput
{
    /// <exception cref="HostException">The file or standard output cannot be written.</exception>
    public static void Write(ShiftReport report, CloseoutOptions options, HostConsole console)
    {
        ReportTarget.Require(options); // once more: reading took its time
        if (options.Html is { } page)
        {
            AtomicFile.Write(page, Encoding.UTF8.GetBytes(report.ToHtml()));
            console.Say($"The page is in {page}.");
        }

        string text = options.Format switch
        {
            ReportFormat.Markdown => report.ToMarkdown(),
            ReportFormat.Json => Encoding.UTF8.GetString(report.ToJson()),
            _ => report.ToText(options.Width ?? (options.Out is null ? console.Width : 100)),
        };
        text = TerminalText.Plain(text.ReplaceLineEndings("\n"));
        text = text.EndsWith('\n') ? text : text + "\n";
        if (options.Out is not { } path)
        {
            StateColours.Write(text, options.Format, console);
            return;
        }

        AtomicFile.Write(path, Encoding.UTF8.GetBytes(text));
        console.Say($"The report is in {path}.");
    }
}
