using System;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Policies;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Reports;
using ToolLedger.Tests.Reconciliation;
using ToolLedger.Tools;

namespace ToolLedger.Tests.Reports;

/// <summary>An invented kit of very many tools, presented very often: every eleventh tool is silent, the others answer in about a quarter of the slots.</summary>
internal static class LargeShift
{
    private static readonly TimeSpan Length = TimeSpan.FromSeconds(30);

    public static ShiftReport Report(int lines, int sessions)
    {
        var policy = new SitePolicy();
        DateTimeOffset end = World.Start + (sessions * Length);
        var kit = new KitManifest(
            new KitId("L-1"),
            1,
            "A bag of very many tools",
            World.Start.AddDays(-9),
            new Signature { By = new PersonId("C-2"), At = World.Start.AddDays(-9), Role = new Role("custodian") },
            [.. Enumerable.Range(1, lines).Select(static number => (ManifestLine)new ToolLine { Number = number, Tool = new Tool { Id = new ToolId(Name(number)), Description = "Pin punch", Mark = Name(number) } })]);
        ReconciliationResult result = new Reconciler(policy.Reconciliation).Reconcile(new ReconciliationInput
        {
            Kits = new KitRegister([kit]),
            Subject = kit.Id,
            Sessions = [.. Enumerable.Range(0, sessions).Select(number => Session(policy, kit, World.Start + (number * Length), number))],
            Tags = new TagRegister(Enumerable.Range(1, lines).Select(static number => World.Binding(World.TagOf(Name(number)), new ToolId(Name(number))))),
            AsOf = end,
        });
        return new ShiftReport(new ShiftReportInput { Results = [result], MadeAt = end });
    }

    private static string Name(int number) => FormattableString.Invariant($"L{number}");

    private static ReadSession Session(SitePolicy policy, KitManifest kit, DateTimeOffset from, int session)
    {
        var builder = new ReadSessionBuilder(
            new Presentation { Id = new SessionId(FormattableString.Invariant($"S-{session}")), Station = World.Station(), Kits = [kit.Id], From = from, Until = from + Length, ReaderClockOffset = TimeSpan.Zero },
            policy.Sessions);
        var random = new Random(session);
        for (double at = 0.1; at < Length.TotalSeconds; at += 0.5)
        {
            foreach (AntennaPort antenna in new[] { World.A1, World.A2 })
            {
                builder.Add(new TagRead(World.TagOf("C1"), antenna, from.AddSeconds(at)));
                foreach (ManifestLine line in kit.Lines)
                {
                    if (line.Number % 11 != 3 && random.Next(4) == 0)
                    {
                        builder.Add(new TagRead(World.TagOf(Name(line.Number)), antenna, from.AddSeconds(at)));
                    }
                }
            }
        }

        return builder.Close(from + Length, TimeSpan.Zero);
    }
}
