using System;
using System.IO;

namespace ShiftCloseout;

/// <summary>Where the host writes, and what it may know of its surroundings. Tests hand in their own.</summary>
internal sealed class HostConsole
{
    /// <summary>Standard output; a failure to write ends the run (<see cref="OutputWriter"/>).</summary>
    public required TextWriter Out { get; init => field = OutputWriter.Around(value); }

    /// <summary>Standard error, for the progress bar; messages go through <see cref="Say"/>.</summary>
    public required TextWriter Error { get; init; }

    public required TimeProvider Clock { get; init; }

    /// <summary>Whether standard output is a terminal that may be coloured.</summary>
    public bool IsColourful { get; init; }

    /// <summary>Whether standard error is a terminal on which a progress bar may move.</summary>
    public bool ShowsProgress { get; init; }

    /// <summary>Columns of text.</summary>
    public int Width { get; init; } = 100;

    /// <summary>The process's own console. NO_COLOR (any value but an empty one) and TERM=dumb switch colour off.</summary>
    public static HostConsole OfProcess()
    {
        bool isDumb = string.Equals(Environment.GetEnvironmentVariable("TERM"), "dumb", StringComparison.Ordinal);
        bool isPlain = isDumb || !string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"));
        return new HostConsole
        {
            Out = Console.Out,
            Error = Console.Error,
            Clock = TimeProvider.System,
            IsColourful = !isPlain && !Console.IsOutputRedirected,
            ShowsProgress = !isDumb && !Console.IsErrorRedirected,
            Width = Console.IsOutputRedirected ? 100 : Math.Clamp(TerminalWidth(), 60, 140),
        };
    }

    /// <summary>
    /// Writes one line to standard error; whatever is inserted stays on that line. When standard error itself fails, there is nobody left to
    /// tell: the exit code still speaks.
    /// </summary>
    public void Say(string line)
    {
        try
        {
            Error.WriteLine(TerminalText.OneLine(line));
            Error.Flush();
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ObjectDisposedException)
        {
        }
    }

    private static int TerminalWidth()
    {
        try
        {
            return Console.WindowWidth is > 0 and int width ? width : 100; // 0: the terminal does not say
        }
        catch (IOException)
        {
            return 100; // no window behind the terminal
        }
    }
}
