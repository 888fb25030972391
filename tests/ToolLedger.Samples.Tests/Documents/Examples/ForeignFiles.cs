using System.Collections.Generic;
using System.IO;
// <example>
using ToolLedger.Interchange;
using ToolLedger.Kits;
using ToolLedger.Reads;
// </example>

namespace ToolLedger.Samples.Tests.Documents.Examples;

/// <summary>The example of docs/read-files.md: reads and a master list with columns of another program.</summary>
internal static class ForeignFiles
{
    public static void Run(TextWriter Console, RepositoryFiles File)
    {
        _ = File;
        // <example>
        byte[] log = """
            stamp;code;port;level
            1791985201.250;3414257BF400000000000067;1;-61.5
            yesterday;3414257BF400000000000067;1;-61.5
            1791985203.750;3414257BF400000000000068;2;-58
            """u8.ToArray();
        var options = new ReadFileOptions
        {
            Columns = new ReadColumns { Tag = "code", FirstSeen = "stamp", Antenna = "port", Rssi = "level" },
            TimeForm = ReadTimeForm.EpochSeconds,
            Delimiter = ';',
        };
        foreach (TagRead read in ReadFile.Csv(log, options, onBadRow: row => Console.WriteLine(row)))
        {
            Console.WriteLine($"{read.Tag} on antenna {read.Antenna}, {read.Strength}");
        }

        // Nothing about a master list is guessed: every column and every word is declared.
        byte[] list = """
            No,Type,What,Inv,Etched,Qty,U
            1,S,Torque wrench 5-25 N m,W-1,R3-1,,
            2,S,Ring spanner 10 mm,W-2,R3-2,2,each
            3,C,Cleaning cloth,,,6,each
            """u8.ToArray();
        MasterList master = MasterListFile.ReadCsv(list, new MasterListOptions
        {
            Columns = new MasterListColumns { Line = "No", Kind = "Type", Description = "What", Tool = "Inv", Mark = "Etched", Quantity = "Qty", Unit = "U" },
            PiecesNotStatedMeansOne = true, // said here, not guessed: this list has no column for it
            KindWords = new Dictionary<string, string> { ["S"] = "tool", ["C"] = "counted" },
        });
        foreach (ManifestLine line in master.Lines)
        {
            Console.WriteLine(line);
        }

        foreach (MasterListIssue issue in master.Issues)
        {
            Console.WriteLine(issue);
        }
        // </example>
    }
}
