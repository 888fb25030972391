using System;
using System.IO;
using System.Linq;
// <example>
using FsCheck.Fluent;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Testing.Generators;
using ToolLedger.Testing.Simulation;
// </example>

namespace ToolLedger.Samples.Tests.Documents.Examples;

/// <summary>The example of docs/testing.md: a simulated closeout held against its truth, and a generator.</summary>
internal static class KnownTruth
{
    public static void Run(TextWriter Console, RepositoryFiles File)
    {
        _ = File;
        // <example>
        DateTimeOffset from = new(2026, 10, 14, 15, 40, 0, TimeSpan.Zero);
        SimulatedSite site = SimulatedSite.Create(kitCount: 1, toolCount: 20, from.AddDays(-30));
        SimulatedSession played = new SessionSimulator(seed: 7).Run(new SessionScenario
        {
            Id = new SessionId("S-1"),
            Station = site.Station,
            From = from,
            PassCount = 2,
            Kits = site.Kits,
            Tags = site.Tags,
            AbsentTools = [site.Kits[0].Lines[4].Tool!.Id], // left somewhere else
        });

        ReconciliationResult result = new Reconciler(new ReconciliationPolicy()).Reconcile(new ReconciliationInput
        {
            Kits = new KitRegister(site.Kits),
            Subject = site.Kits[0].Id,
            Sessions = [played.Close(new SessionPolicy())],
            Tags = site.Tags,
            AsOf = played.Scenario.To,
        });
        Console.WriteLine($"{played.Reads.Count} reads. {result.Kit}");
        foreach (LineConclusion line in result.Lines.Where(line => !line.IsAccounted))
        {
            TagTruth truth = played.Truth.Single(tag => tag.Tool == line.Line.Tool!.Id);
            Console.WriteLine($"{line}; in truth {truth.Placement}");
        }

        // Generators make what the library accepts. What is written must be read back as the same, whatever it is.
        Console.WriteLine(AnyManifest.Generator.Sample(200).All(manifest => KitManifest.Parse(manifest.ToJson()).Digest == manifest.Digest));
        // </example>
    }
}
