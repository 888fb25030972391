using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;

namespace ToolLedger.Samples.Tests.Documents;

/// <summary>What must hold for every document. Each check returns what is wrong, one sentence each.</summary>
internal static class DocumentCheck
{
    private const string Opening = "// <example>";
    private const string Closing = "// </example>";

    /// <summary>Relative links whose file, folder or heading is not there.</summary>
    public static IEnumerable<string> DeadLinks(IReadOnlyList<MarkdownFile> documents, Func<string, bool> exists) =>
        from document in documents
        from link in document.Links
        where !link.Target.Contains("://", StringComparison.Ordinal) && !link.Target.StartsWith("mailto:", StringComparison.Ordinal)
        let parts = link.Target.Split('#', 2)
        let path = parts[0].Length == 0 ? document.Path : Join(document.Path, parts[0])
        where !exists(path) || (parts.Length == 2 && documents.FirstOrDefault(other => other.Path.Equals(path, StringComparison.Ordinal)) is { } target
            && !target.Anchors.Contains(parts[1]))
        select $"{document.Path}, line {link.LineNumber}: nothing is at {link.Target}.";

    /// <summary>C# blocks that repeat no compiled file, or differ from it.</summary>
    public static IEnumerable<string> UncompiledBlocks(MarkdownFile document, Func<string, string?> readSource)
    {
        foreach (CodeBlock block in document.Blocks.Where(block => block.IsCSharp))
        {
            string place = $"{document.Path}, line {block.LineNumber}";
            if (block.ExampleFile is not { } file)
            {
                yield return $"{place}: no comment \"example: file\" before the block says where it is compiled.";
            }
            else if (readSource(file) is not { } source)
            {
                yield return $"{place}: {file} does not exist.";
            }
            else if (!Regions(source).Equals(block.Text, StringComparison.Ordinal))
            {
                yield return $"{place}: the block differs from {file}, which holds:\n{Regions(source)}";
            }
        }
    }

    /// <summary>
    /// The text between the example markers of a source file, each region moved to the left margin, regions apart by an empty line.
    /// </summary>
    public static string Regions(string source)
    {
        List<string> regions = [];
        List<string>? region = null;
        foreach (string line in source.ReplaceLineEndings("\n").Split('\n'))
        {
            string trimmed = line.Trim();
            if (trimmed.Equals(Opening, StringComparison.Ordinal))
            {
                region = [];
            }
            else if (trimmed.Equals(Closing, StringComparison.Ordinal) && region is not null)
            {
                regions.Add(AtTheMargin(region));
                region = null;
            }
            else
            {
                region?.Add(line);
            }
        }

        return string.Join('\n', regions);
    }

    private static string AtTheMargin(List<string> lines)
    {
        int margin = lines.Where(line => line.Trim().Length > 0).Select(line => line.Length - line.TrimStart().Length).DefaultIfEmpty(0).Min();
        return string.Concat(lines.Select(line => (line.Length >= margin ? line[margin..] : "") + "\n"));
    }

    private static string Join(string document, string target)
    {
        const string root = "/root";
        string folder = Path.GetDirectoryName(document) ?? "";
        string full = Path.GetFullPath(Path.Combine(root, folder, target));
        return Path.GetRelativePath(root, full).Replace('\\', '/');
    }
}
