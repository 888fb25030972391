using System;
using System.Buffers;
using System.Linq;
using ToolLedger.Interchange.Llrp;
using ToolLedger.Reads;

namespace ReaderTap;

/// <summary>What the reader of the demo sends. Invented: five tagged tools of which one does not answer, a control tag, a minute on two antennas.</summary>
internal static class DemoStream
{
    private const int Seconds = 60;
    private const int SecondsPerKeepalive = 15;
    private const uint Operation = 1;

    /// <summary>The bytes of the whole connection, the same every time.</summary>
    internal static byte[] Make(TapFiles demo)
    {
        var output = new ArrayBufferWriter<byte>();
        var writer = new LlrpWriter(output);
        DateTimeOffset start = demo.Presentation.From;
        writer.WriteEvent(At(start) with { Kind = LlrpEventKind.ConnectionAttempt, ConnectionStatus = 0 });
        writer.WriteEvent(At(start) with { Kind = LlrpEventKind.RoSpec, EventType = 0, RoSpecId = Operation });
        for (int second = 1; second < Seconds; second++)
        {
            writer.WriteReports(ReadsOf(demo, start.AddSeconds(second), second));
            if (second % SecondsPerKeepalive == 0)
            {
                writer.WriteKeepalive();
            }
        }

        writer.WriteEvent(At(start.AddSeconds(Seconds)) with { Kind = LlrpEventKind.RoSpec, EventType = 1, RoSpecId = Operation });
        return output.WrittenSpan.ToArray();
    }

    private static TagRead[] ReadsOf(TapFiles demo, DateTimeOffset at, int second) =>
    [
        .. from antenna in demo.Presentation.Station.Antennas
           from tag in demo.Presentation.Station.ControlTags.Select(control => control.Tag).Concat(
               demo.Tags.Bindings.Take(demo.Tags.Count - 1).Where((_, index) => (second + index) % 3 == 0).Select(binding => binding.Tag))
           select new TagRead(tag, antenna, at) { LastSeen = at.AddMilliseconds(400), Strength = Rssi.FromDbm(-58 - antenna.Number), Count = 2 },
    ];

    private static LlrpReaderEvent At(DateTimeOffset time) =>
        new() { UtcMicroseconds = (ulong)((time - DateTimeOffset.UnixEpoch).Ticks / TimeSpan.TicksPerMicrosecond) };
}
