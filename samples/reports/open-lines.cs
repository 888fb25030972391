#:project ../../src/ToolLedger/ToolLedger.csproj
// The lines that the last sign-off of each kit left open, the one longest not accounted for first.
// dotnet run open-lines.cs -- ledger.jsonl [2026-10-14T18:00:00+02:00]
using System;
using System.Globalization;
using System.IO;
using ToolLedger.Interchange;
using ToolLedger.Kits;
using ToolLedger.Ledger;
using ToolLedger.Policies;
using ToolLedger.Reconciliation;
using ToolLedger.Reports;

if (args is not [var path, ..])
{
    Console.Error.WriteLine("usage: dotnet run open-lines.cs -- ledger.jsonl [time with offset; now if left out]");
    return 64;
}

DateTimeOffset asOf = args.Length > 1 ? DateTimeOffset.Parse(args[1], CultureInfo.InvariantCulture) : DateTimeOffset.UtcNow;
LedgerBook book = SiteLedger.Open(LedgerFile.JsonLines(File.ReadAllBytes(path)));
foreach ((KitId kit, SignedLine line, DateTimeOffset? since) in new LedgerReport(book.Now, asOf).OpenLines())
{
    string age = since is { } last ? string.Create(CultureInfo.InvariantCulture, $"{(asOf - last).TotalHours:0.0} h") : "never on record";
    Console.WriteLine($"{kit}\t{line.Label}\t{line.Description}\t{line.State}\tlast accounted for: {age}");
}

// Open is not missing: look, and read the mark. What cannot be found, a person declares.
return 0;
