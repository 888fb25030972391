using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;

namespace ToolLedger.Samples.Tests.Documents;

/// <summary>The repository's files, by paths from its root with forward slashes. In an example it stands in for <c>System.IO.File</c>.</summary>
internal sealed class RepositoryFiles
{
    private static readonly string[] WrittenByTools = [".git", "artifacts", "bin", "obj", "TestResults", "StrykerOutput", "BenchmarkDotNet.Artifacts"];

    public RepositoryFiles()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "ToolLedger.sln")))
        {
            folder = folder.Parent;
        }

        Root = folder?.FullName ?? throw new DirectoryNotFoundException("No folder above " + AppContext.BaseDirectory + " holds ToolLedger.sln.");
    }

    public string Root { get; }

    public bool Holds(string path) => Path.Exists(Absolute(path));

    public byte[] ReadAllBytes(string path) => File.ReadAllBytes(Absolute(path));

    public string ReadAllText(string path) => File.ReadAllText(Absolute(path)).ReplaceLineEndings("\n");

    /// <summary>Every file with an extension, in ordinal order, without what builds and tools write.</summary>
    public IReadOnlyList<string> Files(string extension) =>
    [
        .. Directory.EnumerateFiles(Root, "*" + extension, SearchOption.AllDirectories)
            .Select(file => Path.GetRelativePath(Root, file).Replace('\\', '/'))
            .Where(file => !file.Split('/').Any(part => WrittenByTools.Contains(part, StringComparer.Ordinal)))
            .Order(StringComparer.Ordinal),
    ];

    private string Absolute(string path) => Path.Combine(Root, path.Replace('/', Path.DirectorySeparatorChar));
}
