// <example>
using System;
using System.Buffers;
using System.IO;
using ToolLedger.Identifiers;
using ToolLedger.Interchange.Llrp;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;
// </example>

namespace ToolLedger.Samples.Tests.Documents.Examples;

/// <summary>The example of docs/interchange.md: a stream of a reader into a session.</summary>
internal static class ReaderStream
{
    public static void Run(TextWriter Console, RepositoryFiles File)
    {
        _ = File;
        // <example>

        var start = new DateTimeOffset(2026, 11, 9, 14, 0, 0, TimeSpan.FromHours(1));
        var session = new ReadSessionBuilder(
            new Presentation
            {
                Id = new SessionId("S-17"),
                Station = new ReadStation { Id = new StationId("R1"), Antennas = [new AntennaPort(1)] },
                Kits = [],
                From = start,
                ReaderClockOffset = TimeSpan.Zero,
            },
            new SessionPolicy());

        var decoder = new LlrpDecoder();
        var feed = new LlrpSessionFeed(session, new LlrpReadOptions(), fault => Console.WriteLine(fault));
        foreach (byte[] piece in FromSomewhere(start)) // a socket or a file of yours; cut as it comes
        {
            ReadOnlySpan<byte> rest = piece;
            while (decoder.TryRead(ref rest, out LlrpMessage message))
            {
                feed.Add(message, start.AddSeconds(30)); // the instant of arrival
            }
        }

        feed.Finish(decoder, start.AddSeconds(60));
        ReadSession closed = session.Close(start.AddSeconds(60), TimeSpan.Zero);
        Console.WriteLine($"{feed.ReadCount} reads, {closed.TagCount} tag: {closed.Health.State}");
        foreach (Reason reason in closed.Health.Reasons)
        {
            Console.WriteLine(reason);
        }
        // </example>
    }

    // <example>

    private static byte[][] FromSomewhere(DateTimeOffset start)
    {
        var bytes = new ArrayBufferWriter<byte>();
        var writer = new LlrpWriter(bytes); // what a reader would send
        TagId tag = TagId.FromEpc(Epc.Parse("3414257BF4000000000030FF"));
        for (int second = 0; second < 60; second++)
        {
            writer.WriteReports([new TagRead(tag, new AntennaPort(1), start.AddSeconds(second)) { Count = 3 }]);
        }

        writer.WriteEvent(new LlrpReaderEvent { Kind = LlrpEventKind.BufferOverflow, UtcMicroseconds = 1_794_229_230_000_000 });
        return [bytes.WrittenSpan[..1_000].ToArray(), bytes.WrittenSpan[1_000..].ToArray()];
    }
    // </example>
}
