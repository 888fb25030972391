using System;
using System.IO;
using System.Linq;
// <example>
using ToolLedger.Custody;
using ToolLedger.Interchange;
using ToolLedger.Kits;
using ToolLedger.Ledger;
using ToolLedger.Records;
using ToolLedger.Tools;
// </example>

namespace ToolLedger.Samples.Tests.Documents.Examples;

/// <summary>The example of docs/ledger.md: two stations that were offline, a merge, and what was known when.</summary>
internal static class KnownWhen
{
    public static void Run(TextWriter Console, RepositoryFiles File)
    {
        _ = File;
        // <example>
        DateTimeOffset At(int hour, int minute = 0) => new(2026, 10, 14, hour, minute, 0, TimeSpan.FromHours(2));
        KitId kit = new("ROLL-3");
        var spanner = new Tool { Id = new ToolId("W-7"), Description = "Spanner 13 mm", Mark = "R3-7" };
        var kits = new KitRegister([new KitManifest(kit, 1, "Line roll 3", At(0), new Signature { By = new PersonId("P-002"), At = At(0) }, [new ToolLine { Number = 1, Tool = spanner }])]);
        var settings = new LedgerSettings { Kits = kits };
        KitIssue Issue(string id, DateTimeOffset at, string user) =>
            new() { Id = new EntryId(id), At = at, By = new PersonId("P-001"), Kit = kit, Revision = 1, ReceivedBy = new Signature { By = new PersonId(user), At = at }, ExpectedReturn = at.AddHours(8) };

        // Two stations without a line between them take a signature each for one roll.
        var hatch = new LedgerBook(settings);
        var hangar = new LedgerBook(settings);
        Console.WriteLine(hatch.Append(Issue("H-1", At(7, 30), "P-017"), At(7, 30), out _));
        Console.WriteLine(hatch.Append(Issue("H-1", At(7, 30), "P-017"), At(7, 31), out _));
        Console.WriteLine(hangar.Append(Issue("G-1", At(7, 10), "P-021"), At(7, 45), out _));

        LedgerBook merged = hatch.Merge(hangar);
        Console.WriteLine($"same either way: {merged.Digest == hangar.Merge(hatch).Digest}; at 8 with {merged.Now.Custody.HolderOf(kit, At(8))}");
        foreach (LedgerFinding finding in merged.Now.Findings)
        {
            Console.WriteLine(finding);
        }

        // What follows from all entries, and what was known at 7:40.
        Console.WriteLine($"as known at 7:40: with {merged.AsKnownAt(At(7, 40)).Custody.HolderOf(kit, At(8))}");

        // A file holds one canonical entry a line and is only ever added to.
        byte[] file = LedgerFile.ToJsonLines(merged.Entries);
        Console.WriteLine($"{file.Count(one => one == '\n')} lines; read again: {new LedgerBook(settings, LedgerFile.JsonLines(file)).Digest == merged.Digest}");
        // </example>
    }
}
