#:project ../../src/ToolLedger/ToolLedger.csproj
// The tools whose reads were most often too weak, or silent, over all sign-offs: tags to look after.
// dotnet run weak-tools.cs -- ledger.jsonl
using System;
using System.IO;
using System.Linq;
using ToolLedger.Interchange;
using ToolLedger.Ledger;
using ToolLedger.Policies;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

if (args is not [var path, ..])
{
    Console.Error.WriteLine("usage: dotnet run weak-tools.cs -- ledger.jsonl");
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

string weak = Words.Of(LineState.Weak), silent = Words.Of(LineState.NotRead);
var tools = book.Now.SignOffs
    .SelectMany(signOff => signOff.Lines)
    .Where(line => !line.Tool.IsEmpty)
    .GroupBy(line => line.Tool)
    .Select(lines => (Tool: lines.Key, What: lines.Last().Description, Weak: lines.Count(line => line.State == weak), Silent: lines.Count(line => line.State == silent), All: lines.Count()))
    .Where(tool => tool.Weak + tool.Silent > 0)
    .OrderByDescending(tool => tool.Weak + tool.Silent)
    .ThenBy(tool => tool.Tool.Value, StringComparer.Ordinal);
foreach (var tool in tools)
{
    Console.WriteLine($"{tool.Tool}\t{tool.What}\tweak {tool.Weak}, not read {tool.Silent}, of {tool.All} sign-offs");
}

if (!tools.Any())
{
    Console.WriteLine(book.Now.SignOffs.Count == 0 ? "No sign-off is on record." : "No sign-off on record has a tool that was read too weakly, or not at all.");
}

// A tool that was really absent counts here too: this says which tags to look at, not which tools are careless.
return 0;
