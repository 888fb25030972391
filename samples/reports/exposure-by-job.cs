#:project ../../src/ToolLedger/ToolLedger.csproj
// What could be affected by open lines, by equipment, job and place, and the holds that stand.
// dotnet run exposure-by-job.cs -- ledger.jsonl [2026-10-14T18:00:00+02:00]
using System;
using System.Globalization;
using System.IO;
using ToolLedger.Interchange;
using ToolLedger.Ledger;
using ToolLedger.Policies;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Reports;

if (args is not [var path, ..])
{
    Console.Error.WriteLine("usage: dotnet run exposure-by-job.cs -- ledger.jsonl [time with offset; now if left out]");
    return 64;
}

// A time without an offset is no instant.
DateTimeOffset asOf = DateTimeOffset.UtcNow;
if (args.Length > 1 && !DateTimeOffset.TryParseExact(args[1], ["yyyy-MM-dd'T'HH:mm:sszzz", "yyyy-MM-dd'T'HH:mm:ss'Z'"], CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out asOf))
{
    Console.Error.WriteLine($"{args[1]} is no time with offset, such as 2026-10-14T18:00:00+02:00");
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
var report = new LedgerReport(book.Now, asOf, SiteCalendar.Fixed("as asked", asOf.Offset));
Console.Write(report.ExposureByJob().ToText());
Console.WriteLine();
Console.Write(report.OpenHolds().ToText());
return 0;
