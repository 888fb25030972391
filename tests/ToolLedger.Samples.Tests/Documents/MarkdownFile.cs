using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using System.Text.RegularExpressions;

namespace ToolLedger.Samples.Tests.Documents;

/// <summary>The parts of a Markdown document that tests ask about: its links, its headings and its fenced blocks.</summary>
internal sealed partial class MarkdownFile
{
    private readonly List<CodeBlock> _blocks = [];
    private readonly List<(int LineNumber, string Target)> _links = [];
    private readonly HashSet<string> _anchors = new(StringComparer.Ordinal);

    public MarkdownFile(string path, string text)
    {
        Path = path;
        string[] lines = text.ReplaceLineEndings("\n").Split('\n');
        for (int index = 0; index < lines.Length; index++)
        {
            if (lines[index].StartsWith("```", StringComparison.Ordinal))
            {
                index = AddBlock(lines, index);
            }
            else
            {
                AddLine(lines[index], index + 1);
            }
        }
    }

    public string Path { get; }

    public IReadOnlyList<CodeBlock> Blocks => _blocks;

    public IReadOnlyList<(int LineNumber, string Target)> Links => _links;

    /// <summary>The names under which headings can be linked.</summary>
    public IReadOnlySet<string> Anchors => _anchors;

    private int AddBlock(string[] lines, int opening)
    {
        int closing = Array.FindIndex(lines, opening + 1, line => line.StartsWith("```", StringComparison.Ordinal));
        if (closing < 0)
        {
            throw new FormatException($"{Path}, line {opening + 1}: the block is never closed.");
        }

        string before = opening > 0 ? lines[opening - 1].Trim() : "";
        string note = before.StartsWith("<!--", StringComparison.Ordinal) && before.EndsWith("-->", StringComparison.Ordinal) ? before[4..^3].Trim() : "";
        string text = string.Concat(lines[(opening + 1)..closing].Select(line => line + "\n"));
        _blocks.Add(new CodeBlock(opening + 1, lines[opening][3..].Trim().ToLowerInvariant(), note, text));
        return closing;
    }

    private void AddLine(string line, int lineNumber)
    {
        if (line.StartsWith('#'))
        {
            _anchors.Add(Anchor(line.TrimStart('#').Trim()));
        }

        foreach (Match match in Link().Matches(InlineCode().Replace(line, "")))
        {
            _links.Add((lineNumber, match.Groups["target"].Value));
        }
    }

    /// <summary>The anchor that common hosts make of a heading: lower case, no punctuation, hyphens for spaces.</summary>
    private static string Anchor(string heading)
    {
        StringBuilder anchor = new();
        foreach (char c in heading)
        {
            if (char.IsLetterOrDigit(c) || c is '-' or '_')
            {
                anchor.Append(char.ToLower(c, CultureInfo.InvariantCulture));
            }
            else if (c == ' ')
            {
                anchor.Append('-');
            }
        }

        return anchor.ToString();
    }

    [GeneratedRegex(@"(\]\((?<target>[^)\s]+)[^)]*\))|(^\[[^\]]+\]:\s*(?<target>\S+))", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Link();

    [GeneratedRegex("`[^`]*`", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex InlineCode();
}
