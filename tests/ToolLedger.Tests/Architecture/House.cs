using System;
using System.Collections.Generic;
using System.IO;
using System.Reflection;

namespace ToolLedger.Tests.Architecture;

/// <summary>The layout the architecture tests hold: the rooms in the order in which they are built on each other, and the packages.</summary>
internal static class House
{
    /// <summary>The rooms of <c>src/ToolLedger</c>. A room may use the rooms before it in this array, never a later one.</summary>
    public static readonly string[] Rooms =
    [
        "Records",
        "Statistics",
        "Tools",
        "Kits",
        "Reads",
        "Presence",
        "Trials",
        "Custody",
        "Inventory",
        "Calibration",
        "Reconciliation",
        "Holds",
        "Ledger",
        "Interchange",
        "Reports",
        "Policies",
    ];

    /// <summary>Folders that a room may have inside it, as <c>Room.Folder</c>.</summary>
    public static readonly string[] Annexes = ["Interchange.Llrp", "Reconciliation.Rules"];

    /// <summary>The only room that may read and write streams and be asynchronous.</summary>
    public const string StreamingRoom = "Interchange";

    /// <summary>The namespace of the domain library; a room is one step below it.</summary>
    public const string Domain = "ToolLedger";

    /// <summary>The three packages, by assembly name.</summary>
    public static readonly string[] Packages = ["ToolLedger.Identifiers", "ToolLedger", "ToolLedger.Testing"];

    /// <summary>What each package may refer to beside the framework's own <c>System.*</c> assemblies.</summary>
    public static readonly IReadOnlyDictionary<string, string[]> Dependencies = new Dictionary<string, string[]>(StringComparer.Ordinal)
    {
        ["ToolLedger.Identifiers"] = [],
        ["ToolLedger"] = ["ToolLedger.Identifiers", "Microsoft.Extensions.Logging.Abstractions"],
        ["ToolLedger.Testing"] = ["ToolLedger.Identifiers", "ToolLedger", "Microsoft.Extensions.Logging.Abstractions", "FsCheck", "FSharp.Core"],
    };

    /// <summary>The built assembly of a package, as it lies beside the tests.</summary>
    public static Assembly Load(string package) => Assembly.Load(new AssemblyName(package));

    /// <summary>The folder that holds <c>ToolLedger.sln</c>: found by walking up, because CI builds rewrite the path of the caller's file.</summary>
    public static string RootFolder()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "ToolLedger.sln")))
            {
                return folder.FullName;
            }
        }

        throw new DirectoryNotFoundException("No folder above " + AppContext.BaseDirectory + " holds ToolLedger.sln.");
    }
}
