using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Testing.Simulation;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Generators;

/// <summary>What people record beside sightings and counts in a generated shift: known shortages, jobs, breakages and what became of them, parts, seals, alternates in place, openings, items on no list, doubts about tags.</summary>
internal static class AnyShiftRecords
{
    internal static InventoryEntries Draw(SplitMix64 chance, IReadOnlyList<KitManifest> manifests, DateTimeOffset asOf, InventoryEntries plain)
    {
        var counts = new List<LineCount>(plain.Counts);
        var joinings = new List<JoiningStatement>();
        var annotations = new List<Annotation>();
        var uses = new List<ConsumableUse>();
        var breakages = new List<Breakage>();
        var reconstructions = new List<Reconstruction>();
        var substitutions = new List<Substitution>();
        foreach (KitManifest manifest in manifests)
        {
            foreach (ManifestLine line in manifest.Lines)
            {
                Some(chance, 10, () => annotations.Add(Annotated(chance, manifest.Id, line)));
                Some(chance, line is ConsumableLine ? 2 : 40, () => uses.Add(Used(chance, manifest.Id, line, asOf)));
                Some(chance, line is CountedLine or ConsumableLine ? 4 : 40, () => Part(chance, manifest.Id, line, asOf, counts, joinings));
                Some(chance, line is ToolLine { Alternates.Count: > 0 } ? 2 : 40, () => Swap(chance, manifest.Id, line, substitutions));
                if (line.Tool is { } tool)
                {
                    Some(chance, 16, () => breakages.Add(new Breakage { Tool = tool.Id, Pieces = chance.OneIn(4) ? null : chance.Among(2, 4), By = AnyShiftEntries.Person(chance), At = AnyShiftEntries.Time(chance, asOf) }));
                    Some(chance, 16, () => reconstructions.Add(Decided(chance, tool, asOf)));
                }
            }
        }

        return plain with
        {
            Counts = counts,
            Joinings = joinings,
            Annotations = annotations,
            Uses = uses,
            Breakages = breakages,
            Reconstructions = reconstructions,
            Substitutions = substitutions,
            Openings = [.. Times(chance, asOf, 6).Select(at => new KitOpening { Kit = chance.OneIn(4) ? ShiftPool.Box : ShiftPool.Subject, By = AnyShiftEntries.Person(chance), At = at })],
            UnlistedItems = [.. Times(chance, asOf, 10).Select(at => new UnlistedItemReport { Description = "phone", By = AnyShiftEntries.Person(chance), At = at })],
            Seals = [.. Times(chance, asOf, 2).Select(at => new SealRecord { Kit = ShiftPool.Box, Number = Number(chance), By = AnyShiftEntries.Person(chance), At = at.AddHours(-1), InventoriedAt = at.AddHours(-2) })],
            SealChecks = [.. Times(chance, asOf, 2).Select(at => new SealCheck { Kit = ShiftPool.Box, NumberRead = Number(chance), IsIntact = !chance.OneIn(8), By = AnyShiftEntries.Person(chance), At = at })],
        };
    }

    /// <summary>Some bindings are doubted, and some of those doubts are cleared.</summary>
    internal static BindingQuarantine[] Quarantines(SplitMix64 chance, IReadOnlyList<TagBinding> bindings, DateTimeOffset asOf) =>
    [
        .. bindings.Where(_ => chance.OneIn(20)).Select(binding =>
        {
            DateTimeOffset from = asOf.AddSeconds(-chance.Among(0, 5000));
            bool isCleared = chance.OneIn(3);
            return new BindingQuarantine
            {
                Tag = binding.Tag,
                Tool = binding.Tool,
                From = from < binding.From ? binding.From : from,
                By = AnyShiftEntries.Person(chance),
                Reason = "mark and tag differ",
                ClearedAt = isCleared ? (from < binding.From ? binding.From : from).AddSeconds(chance.Among(1, 900)) : null,
                ClearedBy = isCleared ? new PersonId("S") : default,
                ClearedReason = isCleared ? "checked on the bench" : null,
            };
        }),
    ];

    private static void Some(SplitMix64 chance, int oneIn, Action add)
    {
        while (chance.OneIn(oneIn))
        {
            add();
            oneIn = 3 * oneIn;
        }
    }

    private static IEnumerable<DateTimeOffset> Times(SplitMix64 chance, DateTimeOffset asOf, int oneIn)
    {
        for (int left = chance.OneIn(oneIn) ? chance.Among(1, 2) : 0; left > 0; left--)
        {
            yield return AnyShiftEntries.Time(chance, asOf);
        }
    }

    /// <summary>Mostly before the shift, sometimes when it was already known what is there.</summary>
    private static DateTimeOffset Before(SplitMix64 chance) => ShiftPool.Start.AddSeconds(chance.OneIn(4) ? chance.Among(-30, 600) : -chance.Among(60, 30_000));

    private static string Number(SplitMix64 chance) => chance.OneIn(8) ? "N-2" : "N-1";

    private static Annotation Annotated(SplitMix64 chance, KitId kit, ManifestLine line)
    {
        AnnotationKind kind = chance.Weighted(4, 3, 2) switch { 0 => AnnotationKind.Removed, 1 => AnnotationKind.Shortage, _ => AnnotationKind.Restored };
        DateTimeOffset at = Before(chance);
        return new Annotation
        {
            Kit = kit,
            LineNumber = line.Number,
            Kind = kind,
            ShortBy = kind == AnnotationKind.Shortage ? new Quantity(chance.Among(1, 3), line.Expected.Unit) : default,
            Reason = "worn, no spare",
            SignedBy = new Signature { By = AnyShiftEntries.Person(chance), At = at },
            Until = chance.OneIn(6) ? at.AddSeconds(chance.Among(1, 40_000)) : null,
        };
    }

    private static ConsumableUse Used(SplitMix64 chance, KitId kit, ManifestLine line, DateTimeOffset asOf) => new()
    {
        Kit = kit,
        LineNumber = line.Number,
        Job = chance.OneIn(2) ? "J-1" : "J-2",
        Unit = line.Expected.Unit,
        Used = chance.Below(3),
        Scrapped = chance.OneIn(4) ? 1 : 0,
        By = AnyShiftEntries.Person(chance),
        At = chance.OneIn(3) ? AnyShiftEntries.Time(chance, asOf) : Before(chance),
    };

    private static void Part(SplitMix64 chance, KitId kit, ManifestLine line, DateTimeOffset asOf, List<LineCount> counts, List<JoiningStatement> joinings)
    {
        PersonId who = AnyShiftEntries.Person(chance);
        DateTimeOffset at = AnyShiftEntries.Time(chance, asOf);
        counts.Add(new LineCount
        {
            Kit = kit,
            LineNumber = line.Number,
            Quantity = new Quantity(decimal.Max(0, line.Expected.Amount - 1), line.Expected.Unit),
            Parts = 2,
            By = who,
            At = at,
        });
        if (!chance.OneIn(4))
        {
            joinings.Add(new JoiningStatement { Kit = kit, LineNumber = line.Number, Parts = chance.OneIn(6) ? 3 : 2, Wholes = 1, By = who, At = chance.OneIn(4) ? AnyShiftEntries.Time(chance, asOf) : at });
        }
    }

    private static Reconstruction Decided(SplitMix64 chance, Tool tool, DateTimeOffset asOf)
    {
        PersonId by = AnyShiftEntries.Person(chance), witness = AnyShiftEntries.Person(chance);
        return new Reconstruction
        {
            Tool = tool.Id,
            Pieces = chance.Among(1, 4),
            Decision = "laid out against a new one",
            SignedBy = new Signature { By = by, At = AnyShiftEntries.Time(chance, asOf) },
            Witness = witness == by ? default : witness,
        };
    }

    /// <summary>One record, or two of one instant that name different tools.</summary>
    private static void Swap(SplitMix64 chance, KitId kit, ManifestLine line, List<Substitution> substitutions)
    {
        Tool[] tools = [.. AnyShiftParts.ToolsOf(line)];
        DateTimeOffset at = Before(chance);
        int last = tools.Length - 1 - (chance.OneIn(4) ? chance.Below(tools.Length + 1) : 0);
        for (int i = last; i >= Math.Max(0, last - (chance.OneIn(4) ? 1 : 0)); i--)
        {
            substitutions.Add(new Substitution
            {
                Kit = kit,
                LineNumber = line.Number,
                InPlace = tools[i].Id,
                Reason = "like for like",
                By = AnyShiftEntries.Person(chance),
                At = at,
            });
        }
    }
}
