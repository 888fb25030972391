using System;
using System.IO;
using System.Net;
using System.Threading;

namespace ToolLedger.Tests.Architecture.BadHouse.Records;

/// <summary>What only a host may touch.</summary>
internal static class UsesTheHost
{
    internal sealed class ThroughConsole
    {
        public static void Say() => Console.WriteLine();
    }

    internal sealed class ThroughFile
    {
        public static bool Any(string path) => File.Exists(path);
    }

    internal sealed class ThroughNetwork
    {
        public static IPAddress Here() => IPAddress.Loopback;
    }

    internal sealed class ThroughThread
    {
        public static void Wait() => Thread.Sleep(0);
    }
}
