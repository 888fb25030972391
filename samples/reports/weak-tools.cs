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

if (args is not [var path, ..])
{
    Console.Error.WriteLine("usage: dotnet run weak-tools.cs -- ledger.jsonl");
    return 64;
}

LedgerBook book = SiteLedger.Open(LedgerFile.JsonLines(File.ReadAllBytes(path)));
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

// A tool that was really absent counts here too: this says which tags to look at, not which tools are careless.
return 0;
