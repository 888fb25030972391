using System.Linq;
using BenchmarkDotNet.Attributes;
using ToolLedger.Custody;
using ToolLedger.Ledger;

namespace ToolLedger.Benchmarks.Ledger;

/// <summary>A ledger of 100,000 entries: replay, append, look-up.</summary>
[MemoryDiagnoser]
public class LedgerBenchmarks
{
    private const int EntryCount = 100_000;

    private readonly LedgerSettings settings = LedgerCorpus.Settings();
    private readonly CustodyEntry[] entries = LedgerCorpus.Entries(EntryCount);
    private readonly PlainRecord plain = new();
    private LedgerEntry[] recorded = [];
    private CustodyRegister register = CustodyRegister.Empty;

    /// <summary>Makes the entries and what is looked up.</summary>
    [GlobalSetup]
    public void SetUp()
    {
        recorded = [.. entries.Select(static entry => new LedgerEntry(entry, entry.At))];
        register = new LedgerBook(settings, recorded).Now.Custody;
        foreach (CustodyEntry entry in entries)
        {
            plain.Add(entry);
        }
    }

    /// <summary>Dictionaries that ask no rule.</summary>
    /// <returns>How many.</returns>
    [Benchmark(Baseline = true, OperationsPerInvoke = EntryCount)]
    public int PlainDictionaries()
    {
        var record = new PlainRecord();
        foreach (CustodyEntry entry in entries)
        {
            record.Add(entry);
        }

        return record.Count;
    }

    /// <summary>A ledger of entries recorded before.</summary>
    /// <returns>How many.</returns>
    [Benchmark(OperationsPerInvoke = EntryCount)]
    public int Replay() => new LedgerBook(settings, recorded).Count;

    /// <summary>Entries one by one.</summary>
    /// <returns>How many.</returns>
    [Benchmark(OperationsPerInvoke = EntryCount)]
    public int Append()
    {
        var book = new LedgerBook(settings);
        foreach (CustodyEntry entry in entries)
        {
            book.Append(entry, entry.At, out _);
        }

        return book.Count;
    }

    /// <summary>Who has a kit at an instant.</summary>
    /// <returns>The length of the answer.</returns>
    [Benchmark]
    public int LookUp() => register.HolderOf(LedgerCorpus.KitOf(77), LedgerCorpus.Start.AddSeconds(EntryCount / 2)).ToString().Length;

    /// <summary>The same of plain lists.</summary>
    /// <returns>The length of the answer.</returns>
    [Benchmark]
    public int PlainLookUp() => plain.HolderOf(LedgerCorpus.KitOf(77), LedgerCorpus.Start.AddSeconds(EntryCount / 2)).Value.Length;
}
