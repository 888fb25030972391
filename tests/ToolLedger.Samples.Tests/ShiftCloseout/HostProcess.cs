using System;
using System.Diagnostics;
using System.IO;
using System.Threading;
using System.Threading.Tasks;
using Xunit;

namespace ToolLedger.Samples.Tests.ShiftCloseout;

/// <summary>The host as a process of its own, started by a shell, for what only a process has: redirections, pipes and its own end.</summary>
internal static class HostProcess
{
    /// <summary>Runs a shell script in which <c>"$@"</c> stands for the host.</summary>
    public static async Task<(int ExitCode, string Output, string Error)> Shell(string script)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "The script needs a POSIX shell and the devices of Linux.");
        string host = Path.Combine(AppContext.BaseDirectory, "ShiftCloseout");
        var start = new ProcessStartInfo("/bin/sh", ["-c", script, "sh", host])
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using Process process = Process.Start(start)!;
        CancellationToken stop = TestContext.Current.CancellationToken;
        Task<string> output = process.StandardOutput.ReadToEndAsync(stop);
        Task<string> error = process.StandardError.ReadToEndAsync(stop);
        await process.WaitForExitAsync(stop);
        return (process.ExitCode, await output, await error);
    }

    /// <summary>Makes a named pipe that nobody writes to.</summary>
    public static async Task MakePipe(string path)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux() || OperatingSystem.IsMacOS(), "Named pipes in folders are a thing of POSIX.");
        using Process process = Process.Start("mkfifo", [path]);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Equal(0, process.ExitCode);
    }
}
