using System;
using System.IO;
// <example>
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Tools;
// </example>

namespace ToolLedger.Samples.Tests.Documents.Examples;

/// <summary>The example of docs/reads.md: one presentation of a bag, three states of health.</summary>
internal static class OnePresentation
{
    public static void Run(TextWriter Console, RepositoryFiles File)
    {
        _ = File;
        // <example>
        TagId control = TagId.Parse("epc:3414257BF400000000000384");
        TagId spanner = TagId.Parse("epc:3414257BF400000000000067");
        DateTimeOffset start = new(2026, 10, 14, 15, 40, 0, TimeSpan.FromHours(2));
        AntennaPort left = new(1), right = new(2);

        ReadSession Present(TimeSpan? clockOffset, bool isCableLoose)
        {
            var builder = new ReadSessionBuilder(
                new Presentation
                {
                    Id = new SessionId("S-1"),
                    Station = new ReadStation { Id = new StationId("R1"), Antennas = [left, right], ControlTags = [new ControlTag(control)] },
                    Kits = [new KitId("ROLL-3")],
                    From = start,
                    ReaderClockOffset = clockOffset,
                },
                new SessionPolicy());
            builder.BeginPass(start.AddSeconds(30)); // the bag is turned
            for (int second = 0; second < 60; second++)
            {
                builder.Add(new TagRead(control, left, start.AddSeconds(second)));
                builder.Add(new TagRead(control, right, start.AddSeconds(second)));
            }

            for (int report = 0; report < 100; report++)
            {
                builder.Add(new TagRead(spanner, left, start.AddSeconds(12).AddMilliseconds(report))); // a hundred in one slot
            }

            builder.Add(new TagRead(spanner, right, start.AddSeconds(41)));
            if (isCableLoose)
            {
                builder.ReportLoss(SessionLoss.AntennaDisconnected, start.AddSeconds(50), right);
            }

            return builder.Close(start.AddSeconds(60), readerClockOffsetAfter: clockOffset);
        }

        ReadSession good = Present(TimeSpan.Zero, isCableLoose: false);
        TagEvidence evidence = good.Find(spanner)!;
        Console.WriteLine($"{evidence.AcceptedCount} reports, {evidence.LookCount} looks, {evidence.AntennaCount} antennas, {evidence.PassCount} passes");
        Console.WriteLine(good.Health);
        Console.WriteLine(Present(TimeSpan.Zero, isCableLoose: true).Health);
        Console.WriteLine(Present(clockOffset: null, isCableLoose: false).Health);
        // </example>
    }
}
