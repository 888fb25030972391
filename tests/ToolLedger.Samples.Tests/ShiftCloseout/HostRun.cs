using System;
using System.IO;
using System.Threading;
using System.Threading.Tasks;
using ShiftCloseout;

namespace ToolLedger.Samples.Tests.ShiftCloseout;

/// <summary>One run of the host, in this process, with its own streams and clock.</summary>
internal sealed class HostRun
{
    private static readonly DateTimeOffset Now = new(2026, 10, 14, 16, 5, 0, TimeSpan.FromHours(2));

    private HostRun(int exitCode, string output, string error)
    {
        ExitCode = exitCode;
        Output = output;
        Error = error;
    }

    public int ExitCode { get; }

    public string Output { get; }

    public string Error { get; }

    public static Task<HostRun> Of(params string[] args) => Of(isColourful: false, args);

    public static Task<HostRun> Of(bool isColourful, params string[] args) => At(Now, isColourful, 100, args);

    /// <summary>A run on a terminal of so many columns.</summary>
    public static Task<HostRun> OfWidth(int width, params string[] args) => At(Now, isColourful: false, width, args);

    /// <summary>A run on a terminal of so many columns that shows colours.</summary>
    public static Task<HostRun> OnColours(int width, params string[] args) => At(Now, isColourful: true, width, args);

    /// <summary>A run on a clock that stands at another time than usual.</summary>
    public static Task<HostRun> At(DateTimeOffset now, params string[] args) => At(now, isColourful: false, 100, args);

    private static async Task<HostRun> At(DateTimeOffset now, bool isColourful, int width, string[] args)
    {
        var output = new StringWriter { NewLine = "\n" };
        var error = new StringWriter { NewLine = "\n" };
        var console = new HostConsole { Out = output, Error = error, Clock = new FixedClock(now), IsColourful = isColourful, Width = width };
        int code = await CloseoutCommand.RunAsync(args, console, CancellationToken.None);
        return new HostRun(code, output.ToString(), error.ToString());
    }

    /// <summary>A console on the writers given, at the time of every run.</summary>
    public static HostConsole Console(TextWriter output, TextWriter error) => new() { Out = output, Error = error, Clock = new FixedClock(Now) };

    private sealed class FixedClock(DateTimeOffset now) : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => now.ToUniversalTime();
    }
}
