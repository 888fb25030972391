using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Reflection;

namespace ToolLedger.Tests.Architecture;

/// <summary>Checks on what a room may use: earlier rooms, and streams only in the streaming room.</summary>
internal static class FlowCheck
{
    private static readonly HashSet<string> StreamNames = new(StringComparer.Ordinal)
    {
        "System.IO.StreamReader", "System.IO.StreamWriter", "System.IO.BinaryReader", "System.IO.BinaryWriter",
    };

    private static readonly HashSet<string> HostNames = new(StringComparer.Ordinal)
    {
        "System.Console", "System.IO.File", "System.IO.FileInfo", "System.IO.FileStream", "System.IO.Directory", "System.IO.DirectoryInfo",
        "System.Diagnostics.Process", "System.Threading.Thread", "System.Threading.ThreadPool", "System.Threading.Timer",
        "System.Threading.Tasks.Parallel",
    };

    /// <summary>Uses of a later room by an earlier one.</summary>
    public static IEnumerable<Breach> UsesOfLaterRooms(IEnumerable<TypeUse> uses, string rootNamespace) =>
        from use in uses
        let user = RoomIndex(use.User, rootNamespace)
        let used = RoomIndex(use.Used, rootNamespace)
        where user >= 0 && used > user
        select new Breach(use.User.FullName!, $"{House.Rooms[user]} comes before {House.Rooms[used]}, yet {use.Member} uses {use.Used.FullName}.");

    /// <summary>Streams, pipes and tasks outside the streaming room, in signatures or bodies.</summary>
    public static IEnumerable<Breach> StreamsOutsideTheStreamingRoom(IEnumerable<TypeUse> uses, string rootNamespace) =>
        from use in uses
        where IsStreaming(use.Used) && RoomIndex(use.User, rootNamespace) != Array.IndexOf(House.Rooms, House.StreamingRoom)
        select new Breach(use.User.FullName!, $"only {House.StreamingRoom} may use {use.Used.FullName}; {use.Member} does.");

    /// <summary>Files, consoles, processes, sockets and threads: those belong to the host.</summary>
    public static IEnumerable<Breach> UsesOfTheHost(IEnumerable<TypeUse> uses) =>
        from use in uses
        where HostNames.Contains(use.Used.FullName ?? "") || CompiledCode.IsInside(use.Used.Namespace ?? "", "System.Net")
        select new Breach(use.User.FullName!, $"{use.Used.FullName} belongs to the host; {use.Member} uses it.");

    /// <summary>References to assemblies that are neither the framework's nor allowed.</summary>
    public static IEnumerable<Breach> ForeignReferences(Assembly assembly, IReadOnlyCollection<string> allowed) =>
        from reference in assembly.GetReferencedAssemblies()
        let name = reference.Name ?? ""
        where !name.StartsWith("System.", StringComparison.Ordinal) && name is not ("netstandard" or "mscorlib")
            && !allowed.Contains(name, StringComparer.Ordinal)
        select new Breach(name, $"{assembly.GetName().Name} may not refer to it.");

    /// <summary>The position of a type's room in <see cref="House.Rooms"/>, or -1.</summary>
    public static int RoomIndex(Type type, string rootNamespace)
    {
        string name = CompiledCode.NamespaceOf(type);
        if (!name.StartsWith(rootNamespace + ".", StringComparison.Ordinal))
        {
            return -1;
        }

        string rest = name[(rootNamespace.Length + 1)..];
        int end = rest.IndexOf('.', StringComparison.Ordinal);
        return Array.IndexOf(House.Rooms, end < 0 ? rest : rest[..end]);
    }

    private static bool IsStreaming(Type type) =>
        typeof(Stream).IsAssignableFrom(type)
        || StreamNames.Contains(type.FullName ?? "")
        || CompiledCode.IsInside(type.Namespace ?? "", "System.IO.Pipelines")
        || CompiledCode.IsInside(type.Namespace ?? "", "System.Threading.Tasks")
        || type == typeof(IAsyncEnumerable<>)
        || type == typeof(IAsyncDisposable);
}
