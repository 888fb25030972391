// <example>
using System;
using System.Buffers;
using System.IO;
using System.Linq;
using System.Text;
using ToolLedger.Interchange;
using ToolLedger.Reads;
// </example>

namespace ToolLedger.Samples.Tests.Documents.Examples;

/// <summary>The second example of docs/read-files.md: local times by declaration, and a log that is kept and read again.</summary>
internal static class KeptReads
{
    public static void Run(TextWriter Console, RepositoryFiles File)
    {
        _ = File;
        // <example>
        byte[] log = """
            when,tag,port
            2026-10-25 01:59:59,3414257BF400000000000067,1
            2026-10-25 02:30:00,3414257BF400000000000067,1
            2026-10-25 03:00:00.25,3414257BF400000000000068,2
            """u8.ToArray();
        var site = new SiteCalendar(
            "Depot", TimeSpan.FromHours(2), [new OffsetChange(new DateTimeOffset(2026, 10, 25, 1, 0, 0, TimeSpan.Zero), TimeSpan.FromHours(1))]);
        var foreign = new ReadFileOptions
        {
            Columns = new ReadColumns { Tag = "tag", FirstSeen = "when", Antenna = "port" },
            TimeForm = ReadTimeForm.Iso8601Local,
            Calendar = site,
        };

        var kept = new ArrayBufferWriter<byte>(); // or a pipe, or a file of yours
        ReadFileWriter writer = ReadFileWriter.JsonLines(kept, ReadFileOptions.Archive);
        ReadFileReader reader = ReadFile.OpenCsv(log, foreign, onBadRow: row => Console.WriteLine(row));
        var batch = new TagRead[256];
        int count;
        while ((count = reader.Read(batch)) > 0)
        {
            foreach (TagRead read in batch.AsSpan(0, count))
            {
                writer.Write(read);
            }
        }

        Console.Write(Encoding.UTF8.GetString(kept.WrittenSpan));
        TagRead[] replayed = ReadFile.JsonLines(kept.WrittenMemory, ReadFileOptions.Archive).ToArray();
        Console.WriteLine($"{reader.ReadCount} reads, {reader.BadRowCount} row refused, {replayed.Length} replayed");
        // </example>
    }
}
