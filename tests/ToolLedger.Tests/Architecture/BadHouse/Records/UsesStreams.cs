using System;
using System.Collections.Generic;
using System.IO;
using System.IO.Pipelines;
using System.Threading.Tasks;

namespace ToolLedger.Tests.Architecture.BadHouse.Records;

/// <summary>Streams and tasks in a room that may have neither.</summary>
internal static class UsesStreams
{
    internal sealed class ThroughParameter
    {
        public static long Length(Stream stream) => stream.Length;
    }

    internal sealed class ThroughBody
    {
        public static byte[] Copy(byte[] bytes)
        {
            using MemoryStream stream = new(bytes);
            return stream.ToArray();
        }
    }

    internal sealed class ThroughReader
    {
        public static string Text(StreamReader reader) => reader.ReadToEnd();
    }

    internal sealed class ThroughPipe
    {
        public static void Close(PipeReader reader) => reader.Complete();
    }

    internal sealed class ThroughTask
    {
        public static Task Done() => Task.CompletedTask;
    }

    internal sealed class ThroughValueTask
    {
        public static async ValueTask<int> DoneAsync()
        {
            await Task.Yield();
            return 1;
        }
    }

    internal sealed class ThroughAsyncSequence
    {
        public static IAsyncEnumerable<int>? None() => null;
    }

    internal sealed class ThroughDisposal
    {
        public static bool Is(object value) => value is IAsyncDisposable;
    }
}
