using System;
using System.Globalization;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Kits;
using ToolLedger.Ledger;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Benchmarks.Ledger;

/// <summary>Invented custody of 5,000 kits of five tools: issue, visit, loan, closure, turn-in, over and over, in time order.</summary>
internal static class LedgerCorpus
{
    internal const int KitCount = 5_000;

    private const int StepsOfOneRound = 5;

    internal static readonly DateTimeOffset Start = new(2026, 1, 5, 6, 0, 0, TimeSpan.Zero);

    internal static LedgerSettings Settings() => new()
    {
        Kits = new KitRegister(Enumerable.Range(0, KitCount).Select(static kit => new KitManifest(
            KitOf(kit), 1, "invented kit", Start.AddDays(-1), Signed(0, Start.AddDays(-1)),
            Enumerable.Range(1, 5).Select(line => new ToolLine { Number = line, Tool = new Tool { Id = ToolOf(kit, line), Description = "tool" } })))),
    };

    internal static KitId KitOf(int kit) => new("K" + Text(kit));

    internal static ToolId ToolOf(int kit, int line) => new("T" + Text(kit) + "-" + Text(line));

    /// <summary>Entries one second apart; every kit in turn makes the same step.</summary>
    internal static CustodyEntry[] Entries(int count)
    {
        var entries = new CustodyEntry[count];
        for (int i = 0; i < count; i++)
        {
            int kit = i % KitCount;
            int round = i / KitCount / StepsOfOneRound;
            entries[i] = Entry(i / KitCount % StepsOfOneRound, kit, round, Start.AddSeconds(i));
        }

        return entries;
    }

    private static CustodyEntry Entry(int step, int kit, int round, DateTimeOffset at)
    {
        string number = Text(kit) + "-" + Text(round);
        PersonId user = Person(1 + ((kit + round) % 400)), borrower = Person(500 + (kit % 100));
        return step switch
        {
            0 => new KitIssue { Id = new EntryId("I" + number), At = at, By = Person(0), Kit = KitOf(kit), Revision = 1, ReceivedBy = new Signature { By = user, At = at }, ExpectedReturn = at.AddDays(1) },
            1 => new JobVisit { Id = new EntryId("V" + number), At = at, By = user, Kit = KitOf(kit), Job = new JobId("J" + number), Until = at.AddHours(1) },
            2 => new ToolLoan { Id = new EntryId("L" + number), At = at, By = user, Tool = ToolOf(kit, 1), Kit = KitOf(kit), ReceivedBy = new Signature { By = borrower, At = at }, Due = at.AddDays(1) },
            3 => new ReceiptClosure { Id = new EntryId("C" + number), At = at, By = borrower, Receipt = new EntryId("L" + number), AcceptedBy = new Signature { By = user, At = at } },
            _ => new KitTurnIn { Id = new EntryId("R" + number), At = at, By = user, Kit = KitOf(kit), AcceptedBy = new Signature { By = Person(0), At = at } },
        };
    }

    private static Signature Signed(int person, DateTimeOffset at) => new() { By = Person(person), At = at };

    private static PersonId Person(int number) => new("P" + Text(number));

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
