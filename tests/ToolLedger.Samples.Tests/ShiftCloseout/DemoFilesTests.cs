using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using Xunit;

namespace ToolLedger.Samples.Tests.ShiftCloseout;

public sealed class DemoFilesTests
{
    [Fact]
    public void The_demo_folder_holds_what_the_seed_makes_byte_for_byte()
    {
        string folder = Path.Combine(Repository.Root, "samples", "ShiftCloseout", "demo");
        IReadOnlyDictionary<string, byte[]> made = DemoScenario.Files();
        string[] different = [.. made.Where(file => !Same(Path.Combine(folder, file.Key), file.Value)).Select(file => file.Key)];
        string[] surplus = [.. Directory.EnumerateFiles(folder).Select(path => Path.GetFileName(path)!).Where(name => !made.ContainsKey(name)).Where(name => name != "README.md")];
        if (different.Length > 0)
        {
            // The repository is never rewritten by a test: what should be there is laid beside the build's output.
            string aside = Path.Combine(Repository.Root, "artifacts", "demo");
            Directory.CreateDirectory(aside);
            foreach ((string name, byte[] content) in made)
            {
                File.WriteAllBytes(Path.Combine(aside, name), content);
            }
        }

        Assert.True(different.Length == 0, $"Different: {string.Join(", ", different)}. If the change is meant: cp artifacts/demo/* samples/ShiftCloseout/demo/");
        Assert.Empty(surplus);
    }

    private static bool Same(string path, byte[] content) => File.Exists(path) && File.ReadAllBytes(path).AsSpan().SequenceEqual(content);
}
