using System;
using System.Collections.Generic;
using System.IO;
// <example>
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;
// </example>

namespace ToolLedger.Samples.Tests.Documents.Examples;

/// <summary>The example of docs/kits.md: two signed revisions, what differs, which is in force, the totals, and a fault of the data.</summary>
internal static class TwoRevisions
{
    public static void Run(TextWriter Console, RepositoryFiles File)
    {
        _ = File;
        // <example>
        DateTimeOffset spring = new(2026, 4, 1, 7, 0, 0, TimeSpan.FromHours(2));
        DateTimeOffset autumn = new(2026, 10, 1, 7, 0, 0, TimeSpan.FromHours(2));
        var wrench = new Tool { Id = new ToolId("W-1"), Description = "Torque wrench 5-25 N m", Mark = "R3-1", NeedsCalibration = true };
        var ratchet = new Tool { Id = new ToolId("W-2"), Description = "Ratchet with extension bar", Mark = "R3-2", PieceCount = 2 };
        var keys = new SetLine
        {
            Number = 3,
            Location = "lid",
            Container = new Tool { Id = new ToolId("W-3"), Description = "Holder for hex keys", Mark = "R3-3" },
            Contents = "Hex keys 1.5-10 mm",
            TotalCount = 10, // nine keys, and the holder as one of them
        };
        var cloths = new CountedLine { Number = 4, Location = "lid", Description = "Cleaning cloth", Quantity = new Quantity(6, Unit.Each) };
        var signature = new Signature { By = new PersonId("P-002"), At = spring, Role = new Role("custodian") };
        KitId kit = new("ROLL-3");

        var revision1 = new KitManifest(kit, 1, "Line roll 3", spring, signature,
            [new ToolLine { Number = 1, Location = "tray", Tool = wrench }, new ToolLine { Number = 2, Location = "tray", Tool = ratchet }, keys]);
        var remarked = new Tool { Id = wrench.Id, Description = wrench.Description, Mark = "R3-1B", NeedsCalibration = true };
        var revision2 = new KitManifest(kit, 2, "Line roll 3", autumn, signature, [new ToolLine { Number = 1, Location = "tray", Tool = remarked }, keys, cloths]);
        foreach (ManifestChange change in revision1.ChangesTo(revision2))
        {
            Console.WriteLine(change);
        }

        // A tool that moved to another roll and was not taken off the first: shown, not refused.
        var other = new KitManifest(new KitId("ROLL-4"), 1, "Line roll 4", autumn, signature, [new ToolLine { Number = 1, Tool = remarked }]);
        var kits = new KitRegister([revision1, revision2, other]);
        Console.WriteLine($"on 30 September: {kits.Find(kit, autumn.AddDays(-1))}");
        foreach (RecordIssue fault in kits.Faults)
        {
            Console.WriteLine(fault.Reason);
        }

        // Before it is signed, a list is held against the others, and refused with the line.
        if (!new KitRegister([revision1, revision2]).TryAdd(other, notFound: [], out _, out IReadOnlyList<RecordIssue> claims))
        {
            Console.WriteLine(string.Join('\n', claims));
        }

        var tags = new TagRegister([new TagBinding { Tag = TagId.Parse("epc:3414257BF400000000000301"), Tool = keys.Container.Id, From = spring }]);
        ManifestTotal total = ManifestTotals.Of(revision2, kits, tags, autumn).Kit;
        Console.WriteLine($"{total.Items[0]} on {total.LineCount} lines; readers see part of {total.TaggedLineCount}, people must count or look at {total.PeopleLineCount}");

        if (!KitManifest.TryCreate(kit, 3, "Line roll 3", autumn, null, [keys, keys], out _, out IReadOnlyList<RecordIssue> issues))
        {
            Console.WriteLine(string.Join('\n', issues));
        }
        // </example>
    }
}
