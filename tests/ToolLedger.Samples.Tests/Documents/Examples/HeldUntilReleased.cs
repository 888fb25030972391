using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
// <example>
using ToolLedger.Custody;
using ToolLedger.Holds;
using ToolLedger.Kits;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tools;
// </example>

namespace ToolLedger.Samples.Tests.Documents.Examples;

/// <summary>The example of docs/holds.md: a spanner is declared missing, found, and the hold released by somebody who may.</summary>
internal static class HeldUntilReleased
{
    public static void Run(TextWriter Console, RepositoryFiles File)
    {
        _ = File;
        // <example>
        DateTimeOffset At(int hour, int minute = 0) => new(2026, 10, 14, hour, minute, 0, TimeSpan.FromHours(2));
        PersonId user = new("P-017"), authority = new("P-002");
        KitId kit = new("ROLL-3");
        var spanner = new Tool { Id = new ToolId("W-7"), Description = "Spanner 13 mm", Mark = "R3-7" };
        var signed = new Signature { By = authority, At = At(0) };
        var kits = new KitRegister([new KitManifest(kit, 1, "Line roll 3", At(0), signed, [new ToolLine { Number = 1, Tool = spanner }])]);
        JobVisit Visit(string id, int from, int until, string equipment) =>
            new() { Id = new EntryId(id), At = At(from), Until = At(until), By = user, Kit = kit, Job = new JobId("J-" + id), Equipment = new EquipmentId(equipment) };
        var custody = new CustodyRegister(CustodyPolicy.Default, kits, new CustodyLog([Visit("1", 8, 10, "gearbox 4"), Visit("2", 11, 12, "gearbox 9"), Visit("3", 13, 15, "hoist")]));

        // The spanner was last positively accounted for at 10:30; what the roll was near since is held as soon as a person declares it missing.
        var seen = new PositiveAccounting { Kit = kit, Label = "1", Tool = spanner.Id, At = At(10, 30), Basis = AccountingBasis.Sighted };
        var map = new ExposureMap(custody, [seen]);
        Exposure exposure = map.Of(spanner.Id, At(15));
        Console.WriteLine($"near {string.Join("; ", exposure.Things)} in the {exposure.Elapsed?.TotalMinutes} min since it was accounted for");
        var book = new HoldBook(HoldPolicy.Default, RoleRoster.Empty, map);
        void Record(HoldEntry entry)
        {
            RecordAnswer answer = book.Record(entry, out IReadOnlyList<RecordIssue> issues);
            Console.WriteLine($"{entry.At:HH:mm} {entry.Kind}: {answer} {string.Join(' ', issues.Select(issue => issue.Reason))}".TrimEnd());
            foreach (HoldStatus status in book.Live.HeldAt(entry.At))
            {
                Console.WriteLine($"  held: {string.Join("; ", status.Affected)}; {status.SinceDeclaration.TotalMinutes} min since declared, {status.SinceAccounting?.TotalMinutes} min since accounted for");
            }
        }

        var hold = new EntryId("M-1");
        HoldRelease Release(string id, int minute, PersonId by) =>
            new() { Id = new EntryId(id), At = At(16, minute), By = by, Role = new Role("release authority"), Hold = hold, Ground = ReleaseGround.Found, Decision = "found, area inspected" };
        Record(new MissingDeclaration { Id = hold, At = At(15, 20), By = user, Description = "Spanner 13 mm", Tool = spanner.Id, Kit = kit });
        Record(Release("R-1", 0, authority));
        Record(new FoundDeclaration { Id = new EntryId("F-1"), At = At(16, 5), By = user, Hold = hold, Tool = spanner.Id, MarkRead = "R3-7", Equipment = new EquipmentId("hoist") });
        Record(Release("R-2", 6, user));
        Record(Release("R-3", 20, authority));
        // </example>
    }
}
