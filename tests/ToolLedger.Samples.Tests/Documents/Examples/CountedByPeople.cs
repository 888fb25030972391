using System;
using System.Collections.Generic;
using System.IO;
// <example>
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tools;
// </example>

namespace ToolLedger.Samples.Tests.Documents.Examples;

/// <summary>The example of docs/inventory.md: a sighting that is refused, and a kit that two persons close without a reader.</summary>
internal static class CountedByPeople
{
    public static void Run(TextWriter Console, RepositoryFiles File)
    {
        _ = File;
        // <example>
        DateTimeOffset signedAt = new(2026, 10, 1, 7, 0, 0, TimeSpan.FromHours(2));
        DateTimeOffset at = new(2026, 10, 14, 15, 50, 0, TimeSpan.FromHours(2));
        PersonId first = new("P-017"), second = new("P-021");
        KitId kit = new("ROLL-3");
        var pliers = new Tool { Id = new ToolId("W-9"), Description = "Wire twister", Mark = "R3-9" };
        var manifest = new KitManifest(kit, 1, "Line roll 3", signedAt, new Signature { By = first, At = signedAt },
        [
            new ToolLine { Number = 1, Tool = pliers },
            new ConsumableLine { Number = 2, Description = "Split pin 3 mm", Quantity = new Quantity(20, Unit.Each) },
            new CountedLine { Number = 3, Description = "Cleaning cloth", Quantity = new Quantity(6, Unit.Each) },
        ]);

        // "Seen it" is not a sighting: tool, mark, person, time and place are asked for.
        _ = Sighting.TryCreate(pliers.Id, null, first, at, default, out _, out IReadOnlyList<RecordIssue> issues);
        Console.WriteLine(string.Join('\n', issues));

        // A count in a unit that the list does not use is refused while the person still stands there; nothing is converted.
        var kits = new KitRegister([manifest]);
        var inDozens = new LineCount { Kit = kit, LineNumber = 3, Quantity = new Quantity(0.5m, new Unit("dozen")), By = first, At = at };
        Console.WriteLine(new InventorySheet(new InventoryEntries { Counts = [inDozens] }).CheckAgainst(kits)[0]);

        ReconciliationInput Input(decimal cloths, DateTimeOffset asOf, params KitOpening[] openings) => new()
        {
            Kits = kits,
            Subject = kit,
            Inventory = new InventorySheet(new InventoryEntries
            {
                Sightings = [new Sighting { Tool = pliers.Id, MarkRead = "R3-9", By = first, At = at, Where = new Place("bay 2"), InKit = kit }],
                Uses = [new ConsumableUse { Kit = kit, LineNumber = 2, Job = "J-4411", Unit = Unit.Each, Used = 7, Scrapped = 1, By = first, At = at.AddHours(-2) }],
                Counts =
                [
                    new LineCount { Kit = kit, LineNumber = 2, Quantity = new Quantity(12, Unit.Each), By = first, At = at, Witness = second },
                    new LineCount { Kit = kit, LineNumber = 3, Quantity = new Quantity(cloths, Unit.Each), By = first, At = at, Witness = second },
                ],
                Openings = openings,
                Signatures = [new Signature { By = first, At = at.AddMinutes(3) }, new Signature { By = second, At = at.AddMinutes(4) }],
            }),
            AsOf = asOf,
        };

        var reconciler = new Reconciler(new ReconciliationPolicy());
        foreach (decimal cloths in new[] { 6m, 5m, 7m })
        {
            ReconciliationResult result = reconciler.Reconcile(Input(cloths, at.AddMinutes(5)));
            Console.WriteLine($"{cloths} cloths: {result.Kit}");
            foreach (LineConclusion line in result.Lines)
            {
                Console.WriteLine(line.IsAccounted ? $"  {line}" : $"  {line}: {line.Next}");
            }
        }

        // Before something is operated: the inventory of 15:55 satisfies the gate at 16:10, and no longer once somebody has opened the roll.
        ReconciliationResult inventory = reconciler.Reconcile(Input(6, at.AddMinutes(5)));
        var opening = new KitOpening { Kit = kit, By = first, At = at.AddMinutes(18), Where = new Place("bay 2") };
        Console.WriteLine(OperationGate.Judge(inventory, Input(6, at.AddMinutes(20))));
        Console.WriteLine(OperationGate.Judge(inventory, Input(6, at.AddMinutes(20), opening)));
        // </example>
    }
}
