using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
// <example>
using ToolLedger.Calibration;
using ToolLedger.Interchange;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Ledger;
using ToolLedger.Policies;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tools;
// </example>

namespace ToolLedger.Samples.Tests.Documents.Examples;

/// <summary>The second example of docs/ledger.md: what was signed is computed again from what was kept.</summary>
internal static class RecomputedLater
{
    public static void Run(TextWriter Console, RepositoryFiles File)
    {
        // <example>
        // The bytes of everything that goes in, as they came; a store of yours keeps them by name.
        const string folder = "samples/ShiftCloseout/demo/"; // run from the root of the repository
        string[] names = ["policy.json", "manifest-nacelle-bag.json", "presentation.json", "reads.jsonl", "bindings.json", "counts.json", "calibration.json"];
        Dictionary<string, byte[]> kept = names.ToDictionary(name => name, name => File.ReadAllBytes(folder + name));

        // Everything is made from those bytes and one instant: no clock, no setting of the machine, nothing from memory.
        (ReconciliationInput Input, Reconciler Reconciler) Prepare(IReadOnlyDictionary<string, byte[]> files, DateTimeOffset asOf)
        {
            SitePolicy policy = SitePolicy.Parse(files["policy.json"]);
            KitManifest kit = KitManifest.Parse(files["manifest-nacelle-bag.json"]);
            Presentation presentation = Presentation.Parse(files["presentation.json"]);
            var builder = new ReadSessionBuilder(presentation, policy.Sessions);
            foreach (TagRead tagRead in ReadFile.JsonLines(files["reads.jsonl"], onBadRow: _ => builder.ReportLoss(SessionLoss.RowsRefused, presentation.Until!.Value)))
            {
                builder.Add(tagRead);
            }

            var everything = new ReconciliationInput
            {
                Kits = new KitRegister([kit]),
                Subject = kit.Id,
                Sessions = [builder.Close(presentation.Until!.Value)],
                Tags = TagRegister.Parse(files["bindings.json"]),
                Inventory = InventorySheet.Parse(files["counts.json"]),
                Calibration = CalibrationRegister.Parse(files["calibration.json"]),
                AsOf = asOf,
            };
            return (everything, new Reconciler(policy.Reconciliation));
        }

        // On the day: reconcile, sign, and keep the signed entry beside the bytes.
        DateTimeOffset asOf = new(2026, 10, 14, 16, 10, 0, TimeSpan.FromHours(2));
        (ReconciliationInput input, Reconciler reconciler) = Prepare(kept, asOf);
        var signature = new Signature { By = new PersonId("P-021"), At = asOf.AddMinutes(2), Role = new Role("supervisor") };
        SignedReconciliation signed = SignedReconciliation.Of(new EntryId("S-1"), reconciler.Reconcile(input), signature);
        byte[] ledger = LedgerFile.ToJsonLines([new LedgerEntry(signed, signature.At)]);
        Console.WriteLine(signed);

        // Years later, from bytes alone: the entry says for which instant it answered, and the same inputs give the same bytes.
        var read = (SignedReconciliation)LedgerFile.JsonLines(ledger).Single().Content;
        (ReconciliationInput again, Reconciler same) = Prepare(kept, read.AsOf);
        Console.WriteLine($"differs from what was signed: {read.Verify(again, same).Count}");

        // One input is no longer the one that was signed.
        kept["bindings.json"] = new TagRegister(again.Tags.Bindings.Where(binding => binding.Tool != new ToolId("WT-07-01"))).ToJson();
        (ReconciliationInput other, _) = Prepare(kept, read.AsOf);
        foreach (Reason difference in read.Verify(other, same))
        {
            Console.WriteLine(difference.Kind == SigningReasons.OtherInput ? $"another {difference.Values[0].Value}" : difference.ToString());
        }
        // </example>
    }
}
