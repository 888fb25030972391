#:project ../../src/ToolLedger/ToolLedger.csproj
// The lines that the last sign-off of each kit left open, the one longest not accounted for first.
// dotnet run open-lines.cs -- ledger.jsonl [2026-10-14T18:00:00+02:00]
using System;
using System.Globalization;
using System.IO;
using System.Linq;
using ToolLedger.Interchange;
using ToolLedger.Kits;
using ToolLedger.Ledger;
using ToolLedger.Policies;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Reports;

if (args is not [var path, ..])
{
    Console.Error.WriteLine("usage: dotnet run open-lines.cs -- ledger.jsonl [time with offset; now if left out]");
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

// Entries that take no effect or dispute each other: what is said here is said without them.
foreach (LedgerFinding finding in book.Now.Findings)
{
    Console.Error.WriteLine($"look into this first: {finding}");
}

var open = new LedgerReport(book.Now, asOf).OpenLines();
foreach ((KitId kit, SignedLine line, DateTimeOffset? since) in open)
{
    string age = since is { } last ? string.Create(CultureInfo.InvariantCulture, $"{(asOf - last).TotalHours:0.0} h ago") : "never on record";
    Console.WriteLine($"kit {kit}\tline {line.Label}\t{line.Description}\t{line.State}\tlast accounted for: {age}");
}

if (open.Count == 0)
{
    bool isSigned = book.Now.SignOffs.Any(signOff => signOff.At <= asOf);
    Console.WriteLine(isSigned ? "The last sign-off of each kit that has one left no line open." : "No sign-off is on record by then: nothing is known to be accounted for.");
}

// Open is not missing: look, and read the mark. What cannot be found, a person declares.
return 0;
