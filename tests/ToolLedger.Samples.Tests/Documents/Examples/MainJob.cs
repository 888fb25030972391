using System.IO;
using System.Linq;
// <example>
using ToolLedger.Calibration;
using ToolLedger.Interchange;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Policies;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Tools;
// </example>

namespace ToolLedger.Samples.Tests.Documents.Examples;

/// <summary>The main job of the read-me. The parameters stand in for the classes of the same name: what it writes is compared, paths count from the root.</summary>
internal static class MainJob
{
    public static void Run(TextWriter Console, RepositoryFiles File)
    {
        // <example>
        const string folder = "samples/ShiftCloseout/demo/"; // run from the root of the repository
        SitePolicy policy = SitePolicy.Parse(File.ReadAllBytes(folder + "policy.json"));
        KitManifest kit = KitManifest.Parse(File.ReadAllBytes(folder + "manifest-nacelle-bag.json"));
        Presentation presentation = Presentation.Parse(File.ReadAllBytes(folder + "presentation.json"));

        // One presentation of the bag, one thread. Its health is judged when it closes: control tags, gaps, losses, the reader's clock.
        var builder = new ReadSessionBuilder(presentation, policy.Sessions);

        // A row that cannot be used may have been the tag that is missed: told here, and told to the session, which is then no better than degraded.
        void Refused(BadRow row)
        {
            Console.WriteLine(row);
            builder.ReportLoss(SessionLoss.RowsRefused, presentation.Until!.Value);
        }

        foreach (TagRead read in ReadFile.JsonLines(File.ReadAllBytes(folder + "reads.jsonl"), onBadRow: Refused))
        {
            builder.Add(read);
        }

        ReadSession session = builder.Close(presentation.Until!.Value);

        var reconciler = new Reconciler(policy.Reconciliation);
        ReconciliationResult result = reconciler.Reconcile(new ReconciliationInput
        {
            Kits = new KitRegister([kit]),
            Subject = kit.Id,
            Sessions = [session],
            Tags = TagRegister.Parse(File.ReadAllBytes(folder + "bindings.json")),
            Inventory = InventorySheet.Parse(File.ReadAllBytes(folder + "counts.json")),
            Calibration = CalibrationRegister.Parse(File.ReadAllBytes(folder + "calibration.json")),
            AsOf = session.To.AddMinutes(19), // counts and sightings made later are not looked at
        });

        Console.WriteLine(result.Kit);
        foreach (LineConclusion line in result.Lines.Where(line => !line.IsAccounted))
        {
            Console.WriteLine($"{line} ({line.Line.Description}): {line.Next}");
        }
        // </example>
    }
}
