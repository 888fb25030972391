using System;
using System.IO;

namespace ShiftCloseout;

/// <summary>Where the host writes, and what it may know of its surroundings. Tests hand in their own.</summary>
internal sealed class HostConsole
{
    public required TextWriter Out { get; init; }

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
