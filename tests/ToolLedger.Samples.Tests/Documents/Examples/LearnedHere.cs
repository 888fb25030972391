using System;
using System.IO;
using System.Linq;
// <example>
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tools;
// </example>

namespace ToolLedger.Samples.Tests.Documents.Examples;

/// <summary>The third example of docs/presence.md: models learned from sighted shifts go into the policy, and a later shift is concluded by them.</summary>
internal static class LearnedHere
{
    // A document prints the example in one piece.
#pragma warning disable MA0051
    public static void Run(TextWriter Console, RepositoryFiles File)
#pragma warning restore MA0051
    {
        _ = File;
        // <example>
        // An invented bench: two tools with flat tags, two whose tags sit in a recess and answer worse.
        DateTimeOffset first = new(2026, 10, 1, 15, 0, 0, TimeSpan.Zero);
        AntennaPort[] antennas = [new(1), new(2)];
        TagId Tag(int number) => TagId.Parse($"epc:3414257BF4000000000000{number:X2}");
        var station = new ReadStation { Id = new StationId("R1"), Antennas = antennas, ControlTags = [new ControlTag(Tag(99), antennas[0]), new ControlTag(Tag(99), antennas[1])] };
        Tool[] tools = [.. Enumerable.Range(1, 4).Select(number => new Tool { Id = new ToolId($"T{number}"), Description = $"Tool {number}", Mark = $"K-{number}" })];
        KitId kit = new("ROLL-1");
        var kits = new KitRegister([new KitManifest(kit, 1, "Roll", first, new Signature { By = new PersonId("P-001"), At = first }, tools.Select((tool, i) => new ToolLine { Number = i + 1, Tool = tool }))]);
        var tags = new TagRegister(tools.Select((tool, i) => new TagBinding { Tag = Tag(i + 1), Tool = tool.Id, From = first, TagModel = i < 2 ? "flat on steel" : "in a recess" }));

        // Reads of one presentation, drawn: each tag answers at a rate of its own, the recessed ones at lower rates.
        var chance = new Random(7);
        ReadSession Present(int day)
        {
            DateTimeOffset from = first.AddDays(day);
            var builder = new ReadSessionBuilder(
                new Presentation { Id = new SessionId($"S-{day}"), Station = station, Kits = [kit], From = from, Until = from.AddSeconds(30), ReaderClockOffset = TimeSpan.Zero }, new SessionPolicy());
            double[] draws = [chance.NextDouble(), chance.NextDouble(), chance.NextDouble(), chance.NextDouble(), chance.NextDouble(), chance.NextDouble()];
            double[] rates = [Math.Max(draws[0], draws[1]), Math.Max(draws[2], draws[3]), Math.Min(draws[1], draws[4]), Math.Min(draws[3], draws[5])];
            for (int look = 0; look < 120; look++)
            {
                for (int i = 0; i < tools.Length; i++)
                {
                    if (chance.NextDouble() < rates[i])
                    {
                        builder.Add(new TagRead(Tag(i + 1), antennas[look % 2], from.AddSeconds(look / 4.0)));
                    }
                }

                builder.Add(new TagRead(Tag(99), antennas[look % 2], from.AddSeconds(look / 4.0)));
            }

            return builder.Close(from.AddSeconds(30), TimeSpan.Zero);
        }

        ReconciliationResult Conclude(StatedRiskPolicy policy, int day, bool isSighted)
        {
            ReadSession session = Present(day);
            Sighting[] seen = [.. tools.Where(_ => isSighted).Select(tool => new Sighting
            {
                Tool = tool.Id,
                MarkRead = tool.Mark!,
                By = new PersonId("P-017"),
                At = session.To.AddMinutes(1),
                Where = new Place("bench 2"),
                InKit = kit,
            })];
            return new Reconciler(new ReconciliationPolicy { Presence = policy }).Reconcile(new ReconciliationInput
            {
                Kits = kits,
                Subject = kit,
                Sessions = [session],
                Tags = tags,
                Inventory = new InventorySheet(new InventoryEntries { Sightings = seen }),
                AsOf = session.To.AddMinutes(2),
            });
        }

        // Sixty shifts after which somebody sighted every tool: that is the truth that is learned from.
        var before = new StatedRiskPolicy();
        StationLessons lessons = StationModelLearner.Learn([.. Enumerable.Range(1, 60).Select(day => Conclude(before, day, isSighted: true))], tags, shrinkTo: before.Model);
        Console.WriteLine($"{lessons.SessionsLearned} sessions learned from, {lessons.SessionsLeftOut} left out");
        foreach (LearnedStation learned in lessons.Stations)
        {
            Console.WriteLine($"{learned.Station}, {learned.Mounting}: read in {learned.Learned.PassesRead} of {learned.Learned.PassesThere} passes, at least {learned.Learned.ReadShareAtLeast:P1}; mean rate {learned.Model!.Model.Present.Mean:P0}");
        }

        // The learned models go into the policy, and from now on reads count by them.
        ReconciliationResult result = Conclude(new StatedRiskPolicy { Models = lessons.Models }, 61, isSighted: false);
        foreach (LineConclusion line in result.Lines)
        {
            PresenceTerm pass = line.Evidence.Risk!.Terms.Single(term => term.Kind is PresenceTermKind.ReadPass or PresenceTermKind.Silence);
            Console.WriteLine($"{line}: {pass.Reads} of {pass.Looks} looks by model {pass.Model}, risk {line.Evidence.Risk.Decision.Risk:E1}, cut {line.Evidence.Risk.Decision.Cut:E1}");
        }
        // </example>
    }
}
