using System.Collections.Generic;
using System.IO;
using System.Linq;

namespace ToolLedger.Identifiers.Tests.Vectors;

/// <summary>Reads one of the tab-separated files of this folder.</summary>
internal static class VectorFile
{
    internal static IReadOnlyList<IReadOnlyDictionary<string, string>> Read(string name)
    {
        using Stream stream = typeof(VectorFile).Assembly.GetManifestResourceStream(name)
            ?? throw new FileNotFoundException("No such vector file: " + name);
        using var reader = new StreamReader(stream);
        string[] columns = reader.ReadLine()!.Split('\t');
        var rows = new List<IReadOnlyDictionary<string, string>>();
        while (reader.ReadLine() is { } line)
        {
            string[] cells = line.Split('\t');
            rows.Add(columns.Zip(cells, (column, cell) => (column, cell)).ToDictionary(p => p.column, p => p.cell, System.StringComparer.Ordinal));
        }

        return rows;
    }
}
