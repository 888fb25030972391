using System;
using System.Collections.Generic;
using System.IO;
// <example>
using ToolLedger.Custody;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;
// </example>

namespace ToolLedger.Samples.Tests.Documents.Examples;

/// <summary>The example of docs/custody.md: a roll is issued, its wrench lent; a transfer and a turn-in are refused.</summary>
internal static class WhoAnswers
{
    public static void Run(TextWriter Console, RepositoryFiles File)
    {
        _ = File;
        // <example>
        var zone = TimeSpan.FromHours(2);
        DateTimeOffset At(int hour, int minute = 0) => new(2026, 10, 14, hour, minute, 0, zone);
        Signature By(string person, DateTimeOffset at) => new() { By = new PersonId(person), At = at };
        KitId kit = new("ROLL-3");
        var wrench = new Tool { Id = new ToolId("W-9"), Description = "Torque wrench", Mark = "R3-9" };
        var kits = new KitRegister([new KitManifest(kit, 1, "Line roll 3", At(0), By("P-001", At(0)), [new ToolLine { Number = 1, Tool = wrench }])]);
        var book = new CustodyBook(CustodyPolicy.Default, kits);

        void Record(CustodyEntry entry)
        {
            RecordAnswer answer = book.Record(entry, out IReadOnlyList<RecordIssue> issues);
            Console.WriteLine($"{entry.At:HH:mm} {entry.Kind}: {answer} {string.Join(' ', issues)}".TrimEnd());
        }

        Record(new KitIssue { Id = new EntryId("I-1"), At = At(7), By = new PersonId("P-001"), Kit = kit, Revision = 1, ReceivedBy = By("P-017", At(7)), ExpectedReturn = At(15) });
        Record(new ToolLoan
        {
            Id = new EntryId("L-1"),
            At = At(9),
            By = new PersonId("P-017"),
            Tool = wrench.Id,
            Kit = kit,
            ReceivedBy = By("P-021", At(9)),
            Job = new JobId("J-88"),
            Due = At(11),
        });

        // Nobody takes a kit over on one signature, and nobody signs in what they signed out.
        Record(new KitTransfer { Id = new EntryId("X-1"), At = At(12), By = new PersonId("P-017"), Kit = kit, InventoriedAt = At(11, 50) });
        Record(new KitTurnIn { Id = new EntryId("R-1"), At = At(14), By = new PersonId("P-017"), Kit = kit, AcceptedBy = By("P-017", At(14)) });
        Record(new ReceiptClosure { Id = new EntryId("C-1"), At = At(14, 10), By = new PersonId("P-021"), Receipt = new EntryId("L-1"), AcceptedBy = By("P-017", At(14, 10)) });

        Console.WriteLine($"At 10:00 {wrench.Description}: {book.Live.HolderOf(wrench.Id, At(10))}; {kit}: {book.Live.HolderOf(kit, At(10))}");
        foreach (CustodySpan span in book.Live.HistoryOf(wrench.Id, At(16)))
        {
            Console.WriteLine($"{wrench.Description}: {span.Holder}{(span.Until is { } until ? $" until {until:HH:mm}" : "")}");
        }

        (KitId overdue, CustodyHolder holder, DateTimeOffset due) = book.Live.KitsOverdueAt(At(16))[0];
        Console.WriteLine($"{overdue} was due at {due:HH:mm}; {holder} answers");
        // </example>
    }
}
