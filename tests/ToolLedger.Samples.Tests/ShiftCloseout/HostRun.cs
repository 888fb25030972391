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

    public static async Task<HostRun> Of(bool isColourful, params string[] args)
    {
        var output = new StringWriter { NewLine = "\n" };
        var error = new StringWriter { NewLine = "\n" };
        var console = new HostConsole { Out = output, Error = error, Clock = new FixedClock(Now), IsColourful = isColourful };
        int code = await CloseoutCommand.RunAsync(args, console, CancellationToken.None);
        return new HostRun(code, output.ToString(), error.ToString());
    }

    private sealed class FixedClock(DateTimeOffset now) : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => now.ToUniversalTime();
    }
}
