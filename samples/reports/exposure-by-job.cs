#:project ../../src/ToolLedger/ToolLedger.csproj
// What could be affected by open lines, by equipment, job and place, and the holds that stand.
// dotnet run exposure-by-job.cs -- ledger.jsonl [2026-10-14T18:00:00+02:00]
using System;
using System.Globalization;
using System.IO;
using ToolLedger.Interchange;
using ToolLedger.Ledger;
using ToolLedger.Policies;
using ToolLedger.Reports;

if (args is not [var path, ..])
{
    Console.Error.WriteLine("usage: dotnet run exposure-by-job.cs -- ledger.jsonl [time with offset; now if left out]");
    return 64;
}

DateTimeOffset asOf = args.Length > 1 ? DateTimeOffset.Parse(args[1], CultureInfo.InvariantCulture) : DateTimeOffset.UtcNow;
LedgerBook book = SiteLedger.Open(LedgerFile.JsonLines(File.ReadAllBytes(path)));
var report = new LedgerReport(book.Now, asOf);
Console.Write(report.ExposureByJob().ToText());
Console.WriteLine();
Console.Write(report.OpenHolds().ToText());
return 0;
