#:project ../../src/ToolLedger/ToolLedger.csproj
// Who answered for one tool through time, and what it was used on.
// dotnet run tool-custody.cs -- ledger.jsonl W-7 [2026-10-14T18:00:00+02:00]
using System;
using System.Globalization;
using System.IO;
using ToolLedger.Interchange;
using ToolLedger.Ledger;
using ToolLedger.Policies;
using ToolLedger.Reports;
using ToolLedger.Tools;

if (args is not [var path, var tool, ..])
{
    Console.Error.WriteLine("usage: dotnet run tool-custody.cs -- ledger.jsonl TOOL [time with offset; now if left out]");
    return 64;
}

DateTimeOffset asOf = args.Length > 2 ? DateTimeOffset.Parse(args[2], CultureInfo.InvariantCulture) : DateTimeOffset.UtcNow;
LedgerBook book = SiteLedger.Open(LedgerFile.JsonLines(File.ReadAllBytes(path)));
Console.Write(new LedgerReport(book.Now, asOf).CustodyOf(new ToolId(tool)).ToText());
return 0;
