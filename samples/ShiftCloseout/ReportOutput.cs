using System.Text;
using ToolLedger.Reports;

namespace ShiftCloseout;

/// <summary>Writes the report to standard output or, whole or not at all, to a file; and the page beside it.</summary>
internal static class ReportOutput
{
    /// <summary>Both files are on the disk under names of their own before the first is in its place, so that a run that fails leaves neither.</summary>
    /// <exception cref="HostException">A file or standard output cannot be written.</exception>
    public static void Write(ShiftReport report, CloseoutOptions options, HostConsole console)
    {
        ReportTarget.Require(options); // once more: reading took its time
        string text = options.Format switch
        {
            ReportFormat.Markdown => report.ToMarkdown(),
            ReportFormat.Json => Encoding.UTF8.GetString(report.ToJson()),
            _ => report.ToText(options.Width ?? (options.Out is null ? console.Width : 100)),
        };
        text = TerminalText.Plain(text.ReplaceLineEndings("\n"));
        text = text.EndsWith('\n') ? text : text + "\n";
        using AtomicFile? page = options.Html is { } html ? AtomicFile.Prepare(html, Encoding.UTF8.GetBytes(report.ToHtml())) : null;
        using AtomicFile? file = options.Out is { } path ? AtomicFile.Prepare(path, Encoding.UTF8.GetBytes(text)) : null;
        if (file is null)
        {
            StateColours.Write(text, options.Format, console);
            console.Out.Flush();
        }
        else
        {
            file.Publish();
            console.Say($"The report is in {options.Out}.");
        }

        if (page is not null)
        {
            PublishAfter(page);
            console.Say($"The page is in {options.Html}.");
        }
    }

    private static void PublishAfter(AtomicFile page)
    {
        try
        {
            page.Publish();
        }
        catch (HostException error)
        {
            throw new HostException(error.ExitCode, [.. error.Lines, "The report without the page was written before, and belongs to a run that failed."]);
        }
    }
}
