using System;
using System.Linq;
using Xunit;

namespace ToolLedger.Samples.Tests.Documents;

/// <summary>The checks on documents are seen to notice what they are for.</summary>
public sealed class DocumentCheckTests
{
    private const string Source = """
        // <example>
        using ToolLedger.Kits;
        // </example>

        internal static class X
        {
            // <example>
            if (kit)
            {
                Say();
            }
            // </example>
        }
        """;

    private const string SameAsSource = "using ToolLedger.Kits;\n\nif (kit)\n{\n    Say();\n}\n";

    [Theory]
    [InlineData("a file that is not there", "[x](gone.md)")]
    [InlineData("a file in another folder", "[x](../gone.md)")]
    [InlineData("a picture", "![x](gone.png)")]
    [InlineData("a heading that is not there", "[x](#nowhere)")]
    [InlineData("a heading of another document", "[x](../README.md#nowhere)")]
    [InlineData("a reference", "[x]: gone.md")]
    [InlineData("a link with a title", "[x](gone.md \"title\")")]
    [InlineData("a second link in a line", "[x](../README.md) and [y](gone.md)")]
    public void A_dead_link_is_found(string why, string line) =>
        Assert.True(DocumentCheck.DeadLinks([new("docs/a.md", line), ReadMe()], Exists).Count() == 1, why);

    [Theory]
    [InlineData("a file", "[x](../README.md)")]
    [InlineData("a heading with punctuation", "[x](../README.md#what-it-is-not-a-lock)")]
    [InlineData("its own heading", "# Here\n[x](#here)")]
    [InlineData("another host", "[x](https://example.org/gone.md)")]
    [InlineData("a link in inline code", "`[x](gone.md)`")]
    [InlineData("a link in a block", "```text\n[x](gone.md)\n```")]
    public void A_good_link_is_not_blamed(string why, string line) =>
        Assert.False(DocumentCheck.DeadLinks([new("docs/a.md", line), ReadMe()], Exists).Any(), why);

    [Theory]
    [InlineData("no note", "```csharp\nvar x = 1;\n```")]
    [InlineData("another note", "<!-- output -->\n```csharp\nvar x = 1;\n```")]
    [InlineData("a file that is not there", "<!-- example: gone.cs -->\n```csharp\nvar x = 1;\n```")]
    [InlineData("other text", "<!-- example: X.cs -->\n```csharp\nvar x = 1;\n```")]
    [InlineData("another name of the language", "```cs\nvar x = 1;\n```")]
    public void A_block_that_nothing_compiles_is_found(string why, string text) =>
        Assert.True(DocumentCheck.UncompiledBlocks(new("a.md", text), ReadSource).Count() == 1, why);

    [Fact]
    public void A_block_that_equals_the_marked_regions_is_accepted() =>
        Assert.Empty(DocumentCheck.UncompiledBlocks(new("a.md", $"<!-- example: X.cs -->\n```csharp\n{SameAsSource}```"), ReadSource));

    [Fact]
    public void A_block_of_another_language_is_left_alone() =>
        Assert.Empty(DocumentCheck.UncompiledBlocks(new("a.md", "```json\n{}\n```"), ReadSource));

    [Fact]
    public void A_block_that_is_never_closed_is_refused() => Assert.Throws<FormatException>(() => new MarkdownFile("a.md", "text\n```csharp\nvar x = 1;"));

    private static MarkdownFile ReadMe() => new("README.md", "## What it is: not a lock");

    private static bool Exists(string path) => path is "README.md" or "docs/a.md";

    private static string? ReadSource(string path) => path is "X.cs" ? Source : null;
}
