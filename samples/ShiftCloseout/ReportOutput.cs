using System;
using System.Text;
using ToolLedger.Reports;

namespace ShiftCloseout;

/// <summary>Writes the report to standard output or, whole or not at all, to a file; and the page beside it.</summary>
internal static class ReportOutput
{
    /// <summary>Both files are on the disk under names of their own, and the ledger has its entries, before the first is in its place, so that a run that fails leaves neither report nor page nor entries.</summary>
    /// <param name="report">The report.</param>
    /// <param name="options">Where to.</param>
    /// <param name="console">Where to without a file.</param>
    /// <param name="record">Adds to the ledger; null where there is none.</param>
    /// <exception cref="HostException">A file, the ledger or standard output cannot be written.</exception>
    public static void Write(ShiftReport report, CloseoutOptions options, HostConsole console, Func<LedgerAppend?> record)
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
        using LedgerAppend? entries = record();
        try
        {
            Publish(text, file, page, options, console);
        }
        catch (HostException error) when (entries is not null)
        {
            throw new HostException(error.ExitCode, [.. error.Lines, entries.TryUndo()
                ? $"Nothing was added to {options.Ledger}."
                : $"The entries are in {options.Ledger} and could not be taken back. Run it again for the report: that adds none."]);
        }
    }

    private static void Publish(string text, AtomicFile? file, AtomicFile? page, CloseoutOptions options, HostConsole console)
    {
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
