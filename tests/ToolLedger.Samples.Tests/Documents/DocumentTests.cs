using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Reflection;
using Xunit;

namespace ToolLedger.Samples.Tests.Documents;

/// <summary>The documents say what is so: their links lead somewhere, their code is compiled and run, their output is what it prints.</summary>
public sealed class DocumentTests
{
    private const string ExampleFolder = "tests/ToolLedger.Samples.Tests/Documents/Examples/";

    private static readonly RepositoryFiles Files = new();

    public static TheoryData<string> Documents => [.. Files.Files(".md")];

    public static TheoryData<string> Examples => [.. Files.Files(".cs").Where(file => file.StartsWith(ExampleFolder, StringComparison.Ordinal))];

    [Fact]
    public void Every_relative_link_leads_to_a_file_or_a_heading() => None(DocumentCheck.DeadLinks([.. Files.Files(".md").Select(Read)], Files.Holds));

    [Theory]
    [MemberData(nameof(Documents))]
    public void Every_block_of_code_is_compiled_as_it_is_printed(string document) => None(DocumentCheck.UncompiledBlocks(
        Read(document),
        file => file.StartsWith(ExampleFolder, StringComparison.Ordinal) && Files.Holds(file) ? Files.ReadAllText(file) : null));

    /// <summary>Runs the example, and compares what it writes with the block that claims to be its output.</summary>
    [Theory]
    [MemberData(nameof(Examples))]
    public void Every_example_runs_and_writes_what_its_document_says(string example)
    {
        (MarkdownFile document, int index) = Files.Files(".md").Select(Read)
            .SelectMany(file => file.Blocks.Select((block, position) => (file, position)))
            .Single(place => example.Equals(place.file.Blocks[place.position].ExampleFile, StringComparison.Ordinal));

        string written = Run(example);

        CodeBlock? next = document.Blocks.ElementAtOrDefault(index + 1);
        Assert.True(next is { IsOutput: true }, $"{document.Path}: no block with the output follows the example.");
        Assert.Equal(next!.Text, written);
    }

    [Fact]
    public void The_read_me_begins_with_the_job_and_the_two_commands()
    {
        MarkdownFile readMe = Read("README.md");
        Assert.Equal("dotnet run --project samples/ShiftCloseout\ndotnet test\n", readMe.Blocks[0].Text);
        Assert.True(readMe.Blocks[1].IsCSharp);
        Assert.True(Files.Holds("samples/ShiftCloseout/ShiftCloseout.csproj"));
    }

    private static MarkdownFile Read(string path) => new(path, Files.ReadAllText(path));

    /// <summary>Calls the method of the class that has the file's name; a console and a file system of ours stand in for the real ones.</summary>
    private static string Run(string example)
    {
        Type type = typeof(DocumentTests).Assembly.GetType("ToolLedger.Samples.Tests.Documents.Examples." + Path.GetFileNameWithoutExtension(example))
            ?? throw new TypeLoadException("No class has the name of " + example + ".");
        using StringWriter console = new() { NewLine = "\n" };
        MethodInfo run = type.GetMethod("Run", BindingFlags.Public | BindingFlags.Static, [typeof(TextWriter), typeof(RepositoryFiles)])
            ?? throw new MissingMethodException(type.FullName, "Run");
        run.Invoke(null, [console, Files]);
        return console.ToString().ReplaceLineEndings("\n");
    }

    private static void None(IEnumerable<string> faults)
    {
        string all = string.Join('\n', faults);
        Assert.True(all.Length == 0, all);
    }
}
