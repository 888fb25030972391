using System;
using System.IO;

namespace ToolLedger.Tests.Records;

/// <summary>Files of the repository that tests read: test data and documents.</summary>
internal static class RepositoryFiles
{
    /// <summary>The folder that holds the solution, looked for upward from the test binary.</summary>
    internal static string Root { get; } = FindRoot();

    internal static byte[] Read(params string[] path) => File.ReadAllBytes(Path.Combine([Root, .. path]));

    internal static string ReadText(params string[] path) => File.ReadAllText(Path.Combine([Root, .. path]));

    private static string FindRoot()
    {
        for (string? folder = AppContext.BaseDirectory; folder is not null; folder = Path.GetDirectoryName(folder))
        {
            if (File.Exists(Path.Combine(folder, "ToolLedger.sln")))
            {
                return folder;
            }
        }

        throw new InvalidOperationException("The tests run outside of the repository.");
    }
}
