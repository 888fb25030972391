using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text.RegularExpressions;

namespace ToolLedger.Tests.Architecture;

/// <summary>Checks on the source files: folder = namespace, a folder for every room and tests for it, no using of a later room.</summary>
internal static partial class SourceTree
{
    /// <summary>The folder in a package for the language support that netstandard2.0 lacks; its types live in the framework's namespaces.</summary>
    public const string LanguageSupportFolder = "NetStandard";

    /// <summary>The C# files of a project, without what the build writes.</summary>
    public static IEnumerable<string> Files(string projectFolder) =>
        Directory.EnumerateFiles(projectFolder, "*.cs", SearchOption.AllDirectories)
            .Where(file => !Path.GetRelativePath(projectFolder, file).Split(Path.DirectorySeparatorChar)
                .Any(part => part is "bin" or "obj" or LanguageSupportFolder));

    /// <summary>Files whose namespace is not their folder's, below the root namespace of the project.</summary>
    public static IEnumerable<Breach> FilesOutsideTheirNamespace(string projectFolder, string rootNamespace)
    {
        foreach (string file in Files(projectFolder))
        {
            string expected = string.Join('.', Folders(projectFolder, file).Prepend(rootNamespace));
            Match declared = NamespaceLine().Match(File.ReadAllText(file));
            if (declared.Success && !declared.Groups["name"].Value.Equals(expected, StringComparison.Ordinal))
            {
                yield return new Breach(Path.GetRelativePath(projectFolder, file), $"namespace {declared.Groups["name"].Value} should be {expected}.");
            }
        }
    }

    /// <summary>Files that lie in no room: at the top of the project, or in a folder that is not in the list.</summary>
    public static IEnumerable<Breach> FilesInNoRoom(string projectFolder, IReadOnlyCollection<string> rooms) =>
        from file in Files(projectFolder)
        let folder = string.Join('.', Folders(projectFolder, file))
        where !rooms.Contains(folder, StringComparer.Ordinal)
        select new Breach(Path.GetRelativePath(projectFolder, file), $"\"{folder}\" is not in the list of rooms.");

    /// <summary>Rooms without a folder of tests that mirrors them.</summary>
    public static IEnumerable<Breach> RoomsWithoutTests(string projectFolder, string testFolder, IReadOnlyCollection<string> rooms) =>
        from room in RoomsBuilt(projectFolder, rooms)
        let tests = Path.Combine(testFolder, room)
        where !Directory.Exists(tests) || !Directory.EnumerateFiles(tests, "*Tests*.cs", SearchOption.AllDirectories).Any()
        select new Breach(room, "the room has no folder of tests.");

    /// <summary>The rooms that have a source file.</summary>
    public static IEnumerable<string> RoomsBuilt(string projectFolder, IReadOnlyCollection<string> rooms) =>
        Files(projectFolder).Select(file => Folders(projectFolder, file)).Where(folders => folders.Length > 0).Select(folders => folders[0])
            .Distinct(StringComparer.Ordinal).Where(folder => rooms.Contains(folder, StringComparer.Ordinal));

    /// <summary>Using directives for a later room: a constant is copied into compiled code without a trace, so these are asked of the text.</summary>
    public static IEnumerable<Breach> ForwardUsings(string projectFolder, string rootNamespace) =>
        from file in Files(projectFolder)
        let folders = Folders(projectFolder, file)
        where folders.Length > 0
        let user = Array.IndexOf(House.Rooms, folders[0])
        from Match match in UsingLine().Matches(File.ReadAllText(file))
        let name = match.Groups["name"].Value
        where name.StartsWith(rootNamespace + ".", StringComparison.Ordinal)
        let used = Array.IndexOf(House.Rooms, name[(rootNamespace.Length + 1)..].Split('.')[0])
        where user >= 0 && used > user
        select new Breach(Path.GetRelativePath(projectFolder, file), $"{House.Rooms[user]} comes before {House.Rooms[used]}.");

    private static string[] Folders(string projectFolder, string file) =>
        (Path.GetDirectoryName(Path.GetRelativePath(projectFolder, file)) ?? "").Split(Path.DirectorySeparatorChar, StringSplitOptions.RemoveEmptyEntries);

    [GeneratedRegex(@"^namespace\s+(?<name>[\w.]+)", RegexOptions.Multiline | RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, 1000)]
    private static partial Regex NamespaceLine();

    [GeneratedRegex(@"^(?:global\s+)?using\s+(?:static\s+|\w+\s*=\s*)?(?<name>[\w.]+)\s*(?:<.*>)?;", RegexOptions.Multiline | RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, 1000)]
    private static partial Regex UsingLine();
}
