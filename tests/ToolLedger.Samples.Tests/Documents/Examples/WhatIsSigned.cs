using System;
using System.IO;
// <example>
using ToolLedger.Kits;
using ToolLedger.Policies;
using ToolLedger.Reconciliation;
using ToolLedger.Reports;
using ToolLedger.Tools;
// </example>

namespace ToolLedger.Samples.Tests.Documents.Examples;

/// <summary>The example of docs/reports.md: the report of a bag that nobody presented or counted.</summary>
internal static class WhatIsSigned
{
    public static void Run(TextWriter Console, RepositoryFiles File)
    {
        // <example>
        const string folder = "samples/ShiftCloseout/demo/";
        SitePolicy policy = SitePolicy.Parse(File.ReadAllBytes(folder + "policy.json"));
        KitManifest kit = KitManifest.Parse(File.ReadAllBytes(folder + "manifest-yaw-bag.json"));
        DateTimeOffset at = new(2026, 10, 14, 16, 0, 0, TimeSpan.FromHours(2));
        ReconciliationResult result = new Reconciler(policy.Reconciliation).Reconcile(new ReconciliationInput
        {
            Kits = new KitRegister([kit]),
            Subject = kit.Id,
            Tags = TagRegister.Parse(File.ReadAllBytes(folder + "bindings.json")),
            AsOf = at,
        });
        var report = new ShiftReport(new ShiftReportInput
        {
            Results = [result],
            MadeAt = at,
            PolicyName = policy.Name,
            PolicyDigest = policy.Digest,
        });
        // The annex holds the digests of everything above. They change with every setting, so they are left out here.
        string text = report.ToText(width: 120);
        Console.Write(text[..text.IndexOf("\nAnnex: ", StringComparison.Ordinal)]);
        // </example>
    }
}
