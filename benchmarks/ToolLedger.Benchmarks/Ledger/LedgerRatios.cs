using System;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Interchange;
using ToolLedger.Kits;
using ToolLedger.Ledger;

namespace ToolLedger.Benchmarks.Ledger;

/// <summary>Replay, append and as-of look-up of a ledger of 1,000,000 entries against plain dictionaries that ask no rule.</summary>
internal static class LedgerRatios
{
    private const int EntryCount = 1_000_000;
    private const int QueryCount = 200_000;
    private const int LineCount = 50_000;

    internal static int Run()
    {
        LedgerSettings settings = LedgerCorpus.Settings();
        CustodyEntry[] entries = LedgerCorpus.Entries(EntryCount);
        LedgerEntry[] recorded = [.. entries.Select(static entry => new LedgerEntry(entry, entry.At))];
        Ratios.Measure("replay of 1,000,000 entries, an entry", EntryCount, 1, 5,
            ("dictionaries, no rule", () => Plain(entries).Count),
            ("CustodyRegister", () => new CustodyRegister(settings.Custody, settings.Kits, new CustodyLog(entries)).Entries.Count),
            ("LedgerBook", () => new LedgerBook(settings, recorded).Count));
        Ratios.Measure("append one by one, an entry", EntryCount, 1, 5,
            ("dictionaries, no rule", () => Plain(entries).Count),
            ("CustodyBook", () => Recorded(settings, entries)),
            ("LedgerBook", () => Appended(settings, entries)));

        PlainRecord plain = Plain(entries);
        var book = new LedgerBook(settings, recorded);
        CustodyRegister register = book.Now.Custody;
        (KitId Kit, DateTimeOffset At)[] queries = Queries();
        Ratios.Measure("who has the kit at an instant, a question", QueryCount, 3, 9,
            ("list by kit, binary search", () => queries.Sum(query => (long)plain.HolderOf(query.Kit, query.At).Value.Length)),
            ("CustodyRegister.HolderOf kit", () => queries.Sum(query => (long)register.HolderOf(query.Kit, query.At).Person.Value.Length)),
            ("CustodyRegister.HolderOf tool", () => queries.Sum(query => (long)register.HolderOf(LedgerCorpus.ToolOf(0, 1), query.At).Person.Value.Length)));

        byte[] file = LedgerFile.ToJsonLines(recorded.Take(LineCount));
        Ratios.Measure("lines of a file, a line", LineCount, 1, 5,
            ("System.Text.Json, document alone", () => Lines(file)),
            ("LedgerFile.JsonLines", () => LedgerFile.JsonLines(file).Count()));
        return 0;
    }

    private static PlainRecord Plain(CustodyEntry[] entries)
    {
        var plain = new PlainRecord();
        foreach (CustodyEntry entry in entries)
        {
            plain.Add(entry);
        }

        return plain;
    }

    private static long Recorded(LedgerSettings settings, CustodyEntry[] entries)
    {
        var book = new CustodyBook(settings.Custody, settings.Kits);
        return entries.Count(entry => book.Record(entry, out _) == RecordAnswer.Recorded);
    }

    private static long Appended(LedgerSettings settings, CustodyEntry[] entries)
    {
        var book = new LedgerBook(settings);
        return entries.Count(entry => book.Append(entry, entry.At, out _) == AppendOutcome.Appended);
    }

    private static (KitId Kit, DateTimeOffset At)[] Queries()
    {
        var random = new SplitMix64(11);
        return [.. Enumerable.Range(0, QueryCount).Select(_ => (LedgerCorpus.KitOf((int)(random.Next() % LedgerCorpus.KitCount)), LedgerCorpus.Start.AddSeconds((double)(random.Next() % EntryCount))))];
    }

    private static long Lines(byte[] file)
    {
        long count = 0;
        ReadOnlyMemory<byte> rest = file;
        while (!rest.IsEmpty)
        {
            int end = rest.Span.IndexOf((byte)'\n');
            using var document = System.Text.Json.JsonDocument.Parse(rest[..end]);
            count += document.RootElement.GetProperty("content").GetProperty("id").GetString()!.Length > 0 ? 1 : 0;
            rest = rest[(end + 1)..];
        }

        return count;
    }
}
