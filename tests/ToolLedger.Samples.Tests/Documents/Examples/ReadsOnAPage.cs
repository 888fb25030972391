using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
// <example>
using ToolLedger.Interchange;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Policies;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Reports;
using ToolLedger.Tools;
// </example>

namespace ToolLedger.Samples.Tests.Documents.Examples;

/// <summary>The second example of docs/reports.md: the page, and the looks that it draws.</summary>
internal static class ReadsOnAPage
{
    public static void Run(TextWriter Console, RepositoryFiles File)
    {
        // <example>
        const string folder = "samples/ShiftCloseout/demo/";
        SitePolicy policy = SitePolicy.Parse(File.ReadAllBytes(folder + "policy-stated-risk.json"));
        KitManifest kit = KitManifest.Parse(File.ReadAllBytes(folder + "manifest-nacelle-bag.json"));
        TagRegister tags = TagRegister.Parse(File.ReadAllBytes(folder + "bindings.json"));
        var sessions = new List<ReadSession>();
        foreach (string number in new[] { "", "-2" })
        {
            Presentation sheet = Presentation.Parse(File.ReadAllBytes($"{folder}presentation{number}.json"));
            var builder = new ReadSessionBuilder(sheet, policy.Sessions);
            builder.AddRange([.. ReadFile.JsonLines(File.ReadAllBytes($"{folder}reads{number}.jsonl"))]);
            sessions.Add(builder.Close(sheet.Until!.Value));
        }

        DateTimeOffset at = new(2026, 10, 14, 16, 0, 0, TimeSpan.FromHours(2));
        ReconciliationResult result = new Reconciler(policy.Reconciliation).Reconcile(new ReconciliationInput
        {
            Kits = new KitRegister([kit]),
            Subject = kit.Id,
            Sessions = sessions,
            Tags = tags,
            Inventory = InventorySheet.Parse(File.ReadAllBytes(folder + "counts.json")),
            AsOf = at,
        });
        string page = new ShiftReport(new ShiftReportInput { Results = [result], MadeAt = at }).ToHtml();
        Console.WriteLine($"{page[..page.IndexOf('\n')]} ... {page.Split("<details class=\"ev\"").Length - 1} lines with their reads");

        // The marks of line 4, the spanner that lies in the bag nearby, for a picture of your own.
        TagId spanner = tags.LiveTagsOf(kit.FindLine(4)!.Tool!.Id, at)[0].Tag;
        foreach (ReadSession session in sessions)
        {
            IReadOnlyList<Look> looks = session.LooksOf(spanner);
            Console.WriteLine($"{session.Id}: {looks.Count} looks{string.Concat(looks.Select(look => $", antenna {look.Antenna} at {look.From:mm:ss.f}"))}");
        }
        // </example>
    }
}
