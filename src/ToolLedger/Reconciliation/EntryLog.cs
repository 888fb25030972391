using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>All entries of a sheet by the kit they are about, and those about tools that are too late or of no manifest; made once for many kits.</summary>
internal sealed class EntryLog
{
    private readonly Dictionary<KitId, List<PersonEntry>>? ofKit;
    private readonly Dictionary<ToolId, List<PersonEntry>>? tooLate;
    private readonly List<PersonEntry>? ofNoManifest;

    public EntryLog(ReconciliationScope scope)
    {
        KitRegister kits = scope.Input.Kits;
        foreach (PersonEntry entry in KitEntries(scope.Input.Inventory))
        {
            if (kits.Find(entry.Kit, scope.AsOf) is null)
            {
                (ofNoManifest ??= []).Add(entry);
            }

            Put(ofKit ??= [], entry.Kit, entry);
        }

        foreach (PersonEntry entry in ToolEntries(scope.Input.Inventory))
        {
            if (kits.KitOf(entry.Tool, scope.AsOf) is null)
            {
                (ofNoManifest ??= []).Add(entry);
            }

            if (entry.At > scope.AsOf)
            {
                Put(tooLate ??= [], entry.Tool, entry);
            }
        }
    }

    /// <summary>Entries about a kit that no manifest describes, or a tool that no manifest lists.</summary>
    public IReadOnlyList<PersonEntry> OfNoManifest => ofNoManifest ?? (IReadOnlyList<PersonEntry>)[];

    /// <summary>False where no entry about a tool is later than the as-of instant.</summary>
    public bool HasTooLate => tooLate is not null;

    public IReadOnlyList<PersonEntry> OfKit(KitId kit) => ofKit?.GetValueOrDefault(kit) ?? (IReadOnlyList<PersonEntry>)[];

    public IReadOnlyList<PersonEntry> TooLate(ToolId tool) => tooLate?.GetValueOrDefault(tool) ?? (IReadOnlyList<PersonEntry>)[];

    /// <summary>Every entry that is about a kit or one of its lines.</summary>
    public static IEnumerable<PersonEntry> KitEntries(InventorySheet sheet) =>
    [
        .. sheet.Counts.Select(static entry => OfLine(entry, entry.Kit, entry.LineNumber, entry.By, entry.At)),
        .. sheet.Annotations.Select(static entry => OfLine(entry, entry.Kit, entry.LineNumber, entry.SignedBy.By, entry.SignedBy.At)),
        .. sheet.Uses.Select(static entry => OfLine(entry, entry.Kit, entry.LineNumber, entry.By, entry.At)),
        .. sheet.Joinings.Select(static entry => OfLine(entry, entry.Kit, entry.LineNumber, entry.By, entry.At)),
        .. sheet.Openings.Select(static entry => OfLine(entry, entry.Kit, 0, entry.By, entry.At)),
        .. sheet.Substitutions.Select(static entry => OfLine(entry, entry.Kit, entry.LineNumber, entry.By, entry.At)),
        .. sheet.Seals.Select(static entry => OfLine(entry, entry.Kit, 0, entry.By, entry.At)),
        .. sheet.SealChecks.Select(static entry => OfLine(entry, entry.Kit, 0, entry.By, entry.At)),
    ];

    /// <summary>Every entry that is about a tool.</summary>
    public static IEnumerable<PersonEntry> ToolEntries(InventorySheet sheet) =>
    [
        .. sheet.Sightings.Select(static entry => new PersonEntry { Entry = entry, By = entry.By, At = entry.At, Tool = entry.Tool, Kit = entry.InKit }),
        .. sheet.PieceCounts.Select(static entry => new PersonEntry { Entry = entry, By = entry.By, At = entry.At, Tool = entry.Tool }),
        .. sheet.Breakages.Select(static entry => new PersonEntry { Entry = entry, By = entry.By, At = entry.At, Tool = entry.Tool }),
        .. sheet.Reconstructions.Select(static entry => new PersonEntry { Entry = entry, By = entry.SignedBy.By, At = entry.SignedBy.At, Tool = entry.Tool }),
    ];

    private static PersonEntry OfLine(object entry, KitId kit, int line, PersonId by, DateTimeOffset at)
        => new() { Entry = entry, Kit = kit, LineNumber = line, By = by, At = at };

    private static void Put<TKey>(Dictionary<TKey, List<PersonEntry>> lists, TKey key, PersonEntry entry)
        where TKey : notnull
    {
        if (!lists.TryGetValue(key, out List<PersonEntry>? list))
        {
            lists.Add(key, list = []);
        }

        list.Add(entry);
    }
}
