using System;
using System.IO;

namespace ToolLedger.Samples.Tests;

/// <summary>Where the repository lies, found from the running test upwards.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    private static string Find()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "ToolLedger.sln")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException("The tests must run from within the repository.");
    }
}
