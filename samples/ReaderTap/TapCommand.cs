using System;
using System.Buffers;
using System.IO;
using System.Net;
using System.Net.Sockets;
using System.Threading;
using System.Threading.Tasks;
using ToolLedger.Interchange.Llrp;

namespace ReaderTap;

/// <summary>The command: where the bytes come from, and what is done with them.</summary>
internal static class TapCommand
{
    private const int PieceLength = 16_384;

    internal static async Task<int> RunAsync(string[] arguments, TextWriter output, TextWriter error, TimeProvider clock, CancellationToken cancellation)
    {
        try
        {
            TapOptions options = TapOptions.Parse(arguments);
            if (options.ShowHelp)
            {
                output.WriteLine(TapOptions.Help.ReplaceLineEndings("\n"));
                return ExitCodes.Complete;
            }

            if (options.SaveDemo is { } saved)
            {
                await WriteAsync(saved, DemoStream.Make(TapFiles.Load(new TapOptions())), cancellation);
                output.WriteLine($"The stream of the demo is in {saved}.");
                return ExitCodes.Complete;
            }

            return options.Play is { } played
                ? await StreamPlayer.RunAsync(await ReadAsync(played, cancellation), options.Port!.Value, output, cancellation)
                : await TapAsync(options, output, clock, cancellation);
        }
        catch (TapException stopped)
        {
            error.WriteLine(stopped.Message);
            return stopped.ExitCode;
        }
        catch (OperationCanceledException)
        {
            error.WriteLine("Stopped; nothing was concluded.");
            return ExitCodes.Usage;
        }
    }

    private static async Task<int> TapAsync(TapOptions options, TextWriter output, TimeProvider clock, CancellationToken cancellation)
    {
        TapFiles files = TapFiles.Load(options);
        using TapArchive? archive = options.Archive is { } kept ? new TapArchive(kept, files.Presentation) : null;
        var session = new TapSession(files, output, archive);
        if (options.Port is { } port)
        {
            output.WriteLine($"Listening to 127.0.0.1:{port}.");
            await ListenAsync(session, port, clock, cancellation);
            return session.Close(!session.IsOperationEnded, isRecording: false, clock.GetUtcNow());
        }

        if (options.Reads is { } reads)
        {
            output.WriteLine($"Reading {reads}.");
            session.Replay(await ReadAsync(reads, cancellation));
            return session.Close(isConnectionLost: false, isRecording: false, files.Presentation.Until!.Value);
        }

        byte[] stream = options.Stream is { } path ? await ReadAsync(path, cancellation) : DemoStream.Make(files);
        output.WriteLine(options.Stream is null ? "The demo, on invented data: an overhead-line crew hands in a bag." : $"Reading {options.Stream}.");
        session.Take(stream, files.Presentation.Until!.Value, null);
        return session.Close(isConnectionLost: false, isRecording: true, files.Presentation.Until.Value);
    }

    private static async Task ListenAsync(TapSession session, int port, TimeProvider clock, CancellationToken cancellation)
    {
        using var client = new TcpClient();
        try
        {
            await client.ConnectAsync(IPAddress.Loopback, port, cancellation);
        }
        catch (SocketException problem)
        {
            throw new TapException(ExitCodes.Unavailable, $"127.0.0.1:{port}: {problem.Message}");
        }

        try
        {
            await using NetworkStream connection = client.GetStream();
            var piece = new byte[PieceLength];
            var owed = new ArrayBufferWriter<byte>();
            var answer = new LlrpWriter(owed);
            int count;
            while (!session.IsOperationEnded && (count = await connection.ReadAsync(piece, cancellation)) > 0)
            {
                session.Take(piece.AsSpan(0, count), clock.GetUtcNow(), answer);
                if (owed.WrittenCount > 0)
                {
                    await connection.WriteAsync(owed.WrittenMemory, cancellation);
                    owed.ResetWrittenCount();
                }
            }
        }
        catch (IOException)
        {
            // The connection broke. The caller sees that the operation has not ended, and the session becomes invalid.
        }
    }

    private static async Task<byte[]> ReadAsync(string path, CancellationToken cancellation)
    {
        try
        {
            return await File.ReadAllBytesAsync(path, cancellation);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new TapException(ExitCodes.Usage, $"{path} cannot be read: {problem.Message}");
        }
    }

    private static async Task WriteAsync(string path, byte[] bytes, CancellationToken cancellation)
    {
        try
        {
            await File.WriteAllBytesAsync(path, bytes, cancellation);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new TapException(ExitCodes.Usage, $"{path} cannot be written: {problem.Message}");
        }
    }
}
