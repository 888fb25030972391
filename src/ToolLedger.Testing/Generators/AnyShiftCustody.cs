using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Testing.Simulation;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Generators;

/// <summary>Who answers for what in a generated shift: the kit issued to its user, tools lent or at a laboratory on receipts that the receiver signed or did not, some of them closed, some later than asked.</summary>
internal static class AnyShiftCustody
{
    private static readonly Place Laboratory = new("laboratory");

    internal static CustodyEntry[] Draw(SplitMix64 chance, IReadOnlyList<KitManifest> manifests, DateTimeOffset asOf)
    {
        if (!chance.OneIn(3))
        {
            return [];
        }

        KitManifest subject = manifests[0];
        DateTimeOffset from = ShiftPool.Start.AddHours(-8) > subject.EffectiveFrom ? ShiftPool.Start.AddHours(-8) : subject.EffectiveFrom;
        var entries = new List<CustodyEntry>();
        if (chance.OneIn(2))
        {
            entries.Add(new KitIssue
            {
                Id = new EntryId("I1"),
                At = from,
                By = new PersonId("S"),
                Kit = subject.Id,
                Revision = subject.Revision,
                ReceivedBy = Signed("P", from),
                ExpectedReturn = ShiftPool.Start.AddHours(chance.OneIn(6) ? -1 : 1),
            });
        }

        foreach (KitManifest manifest in manifests.Where(manifest => manifest.Id == subject.Id ? manifest == subject : manifest.Id == ShiftPool.Box))
        {
            foreach (ToolId tool in manifest.Lines.Select(static line => line.Tool?.Id).OfType<ToolId>().Where(_ => chance.OneIn(6)))
            {
                Receive(chance, subject.Id, tool, from, asOf, entries);
            }
        }

        return [.. entries];
    }

    private static void Receive(SplitMix64 chance, KitId kit, ToolId tool, DateTimeOffset from, DateTimeOffset asOf, List<CustodyEntry> entries)
    {
        var id = new EntryId("R" + entries.Count.ToString(CultureInfo.InvariantCulture));
        DateTimeOffset at = chance.OneIn(8) ? asOf.AddSeconds(chance.Among(1, 600)) : from.AddSeconds(chance.Among(1, 280));
        Signature? received = chance.OneIn(4) ? null : Signed("Q", at);
        entries.Add(chance.OneIn(3)
            ? new LaboratoryReceipt { Id = id, At = at, By = new PersonId("P"), Tool = tool, Kit = kit, ReceivedBy = received, Where = Laboratory }
            : new ToolLoan { Id = id, At = at, By = new PersonId("P"), Tool = tool, Kit = kit, ReceivedBy = received, ToKit = chance.OneIn(2) ? ShiftPool.Second : default, Due = at.AddHours(chance.Among(1, 30)) });
        if (chance.OneIn(4))
        {
            DateTimeOffset back = at.AddSeconds(chance.Among(1, 20));
            entries.Add(new ReceiptClosure { Id = new EntryId(id.Value + "-back"), At = back, By = new PersonId("Q"), Receipt = id, AcceptedBy = Signed("P", back) });
        }
    }

    private static Signature Signed(string by, DateTimeOffset at) => new() { By = new PersonId(by), At = at };
}
