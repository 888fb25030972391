using System;
using System.IO;
using System.Threading.Tasks;
using Spectre.Console;

namespace ShiftCloseout;

/// <summary>A progress bar on standard error while a large file is read, and only where somebody watches.</summary>
internal static class ReadsProgress
{
    /// <summary>Files below this size are read before a bar could be seen.</summary>
    public const long LargeFileBytes = 20_000_000;

    /// <summary>Runs the work; it is handed what to tell the number of bytes read, or <see langword="null"/> when no bar is shown.</summary>
    public static async Task<T> RunAsync<T>(string name, long length, HostConsole console, Func<Action<long>?, Task<T>> work)
    {
        if (!console.ShowsProgress || length <= LargeFileBytes)
        {
            return await work(null);
        }

        IAnsiConsole terminal = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(console.Error) });
        return await terminal.Progress().AutoClear(true).StartAsync(async context =>
        {
            ProgressTask bar = context.AddTask(Markup.Escape(TerminalText.Plain(Path.GetFileName(name))), maxValue: length);
            return await work(count => bar.Value = count);
        });
    }
}
