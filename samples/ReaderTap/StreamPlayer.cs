using System;
using System.Collections.Generic;
using System.IO;
using System.Net;
using System.Net.Sockets;
using System.Threading;
using System.Threading.Tasks;
using ToolLedger.Interchange.Llrp;

namespace ReaderTap;

/// <summary>Plays a recorded stream as its reader did, to one client on this machine, and waits for the answer to each keep-alive.</summary>
internal static class StreamPlayer
{
    private static readonly TimeSpan AnswerTime = TimeSpan.FromSeconds(5);

    /// <exception cref="TapException">The port cannot be used, or a keep-alive is not answered.</exception>
    internal static async Task<int> RunAsync(byte[] stream, int port, TextWriter output, CancellationToken cancellation)
    {
        using var listener = new TcpListener(IPAddress.Loopback, port);
        try
        {
            listener.Start(1);
            output.WriteLine($"Playing to whoever connects to 127.0.0.1:{port}.");
            using TcpClient client = await listener.AcceptTcpClientAsync(cancellation);
            await using NetworkStream connection = client.GetStream();
            int answers = 0;
            foreach ((ReadOnlyMemory<byte> frame, bool isKeepalive) in Frames(stream))
            {
                await connection.WriteAsync(frame, cancellation);
                if (isKeepalive)
                {
                    await RequireAnswerAsync(connection, cancellation);
                    answers++;
                }
            }

            // The client closes when it has heard the end; closing first would look like a lost connection.
            client.Client.Shutdown(SocketShutdown.Send);
            output.WriteLine($"Played {stream.Length} bytes; {answers} keep-alives were answered.");
            return ExitCodes.Complete;
        }
        catch (Exception error) when (error is SocketException or IOException)
        {
            throw new TapException(ExitCodes.Unavailable, $"127.0.0.1:{port}: {error.Message}");
        }
    }

    private static List<(ReadOnlyMemory<byte> Frame, bool IsKeepalive)> Frames(byte[] stream)
    {
        var frames = new List<(ReadOnlyMemory<byte>, bool)>();
        var decoder = new LlrpDecoder();
        ReadOnlySpan<byte> rest = stream;
        int at = 0;
        while (decoder.TryRead(ref rest, out LlrpMessage message))
        {
            int end = stream.Length - rest.Length;
            frames.Add((stream.AsMemory(at, end - at), message.Type == LlrpMessageType.Keepalive));
            at = end;
        }

        // What is broken is played as it is: that is what a recording is for.
        frames.Add((stream.AsMemory(at), false));
        return frames;
    }

    private static async Task RequireAnswerAsync(NetworkStream connection, CancellationToken cancellation)
    {
        using var wait = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        wait.CancelAfter(AnswerTime);
        var answer = new byte[10];
        try
        {
            await connection.ReadExactlyAsync(answer, wait.Token);
        }
        catch (OperationCanceledException) when (!cancellation.IsCancellationRequested)
        {
            throw new TapException(ExitCodes.Unavailable, $"A keep-alive was not answered within {AnswerTime.TotalSeconds} s.");
        }

        if (!IsKeepaliveAck(answer))
        {
            throw new TapException(ExitCodes.Unavailable, "A keep-alive was answered by something else: " + Convert.ToHexString(answer));
        }
    }

    private static bool IsKeepaliveAck(ReadOnlySpan<byte> bytes) =>
        new LlrpDecoder().TryRead(ref bytes, out LlrpMessage message) && message.Type == LlrpMessageType.KeepaliveAck;
}
