using System;
using System.IO;
using System.Text;
using ToolLedger.Reports;

namespace ShiftCloseout;

/// <summary>Writes the report to standard output or, whole or not at all, to a file.</summary>
internal static class ReportOutput
{
    /// <exception cref="HostException">The file cannot be written.</exception>
    public static void Write(ShiftReport report, CloseoutOptions options, HostConsole console)
    {
        string text = options.Format switch
        {
            ReportFormat.Markdown => report.ToMarkdown(),
            ReportFormat.Json => Encoding.UTF8.GetString(report.ToJson()),
            _ => report.ToText(options.Out is null ? console.Width : 100),
        };
        text = TerminalText.Plain(text.ReplaceLineEndings("\n"));
        text = text.EndsWith('\n') ? text : text + "\n";
        if (options.Out is not { } path)
        {
            StateColours.Write(text, options.Format, console);
            return;
        }

        try
        {
            AtomicFile.Write(path, Encoding.UTF8.GetBytes(text));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new HostException(ExitCodes.Usage, $"{path}: the report cannot be written: {error.Message}");
        }

        console.Error.WriteLine(TerminalText.Plain($"The report is in {path}."));
    }
}
