using System;
using System.IO;
using System.Net;
using System.Net.Sockets;
using System.Threading;
using System.Threading.Tasks;
using ReaderTap;

namespace ToolLedger.Samples.Tests.ReaderTap;

/// <summary>One run of the tap in this process.</summary>
internal sealed record TapRun(int ExitCode, string Output, string Error)
{
    public static async Task<TapRun> OfAsync(CancellationToken cancellation, params string[] arguments)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        int code = await TapCommand.RunAsync(arguments, output, error, TimeProvider.System, cancellation);
        return new TapRun(code, output.ToString(), error.ToString());
    }

    /// <summary>A port of this machine that nobody listens to.</summary>
    public static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
