#:project ../../src/ToolLedger/ToolLedger.csproj
// Who answered for one tool through time, and what it was used on.
// dotnet run tool-custody.cs -- ledger.jsonl W-7 [2026-10-14T18:00:00+02:00]
using System;
using System.Globalization;
using System.IO;
using ToolLedger.Interchange;
using ToolLedger.Ledger;
using ToolLedger.Policies;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Reports;
using ToolLedger.Tools;

if (args is not [var path, var tool, ..])
{
    Console.Error.WriteLine("usage: dotnet run tool-custody.cs -- ledger.jsonl TOOL [time with offset; now if left out]");
    return 64;
}

// A time without an offset is no instant.
DateTimeOffset asOf = DateTimeOffset.UtcNow;
if (args.Length > 2 && !DateTimeOffset.TryParseExact(args[2], ["yyyy-MM-dd'T'HH:mm:sszzz", "yyyy-MM-dd'T'HH:mm:ss'Z'"], CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out asOf))
{
    Console.Error.WriteLine($"{args[2]} is no time with offset, such as 2026-10-14T18:00:00+02:00");
    return 64;
}

LedgerBook book;
try
{
    book = SiteLedger.Open(LedgerFile.JsonLines(File.ReadAllBytes(path)));
}
catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or ReadFileException or RecordException)
{
    Console.Error.WriteLine($"{path}: {problem.Message}");
    return 65;
}
Console.Write(new LedgerReport(book.Now, asOf, SiteCalendar.Fixed("as asked", asOf.Offset)).CustodyOf(new ToolId(tool)).ToText());
return 0;
