using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace PitReaderLog;

/// <summary>Concludes for a kit of one tag, over any stretch of the log.</summary>
internal sealed class LogCloseout
{
    private static readonly KitId Kit = new("KIT-1");
    private static readonly ToolId Tool = new("TOOL-1");

    private readonly TagRead[] _reads;
    private readonly ReadStation _station;
    private readonly KitRegister _kits;
    private readonly TagRegister _tags;
    private readonly SessionPolicy _sessions;
    private readonly Reconciler _reconciler;
    private readonly TimeSpan _clockOffset;

    /// <param name="reads">The reads of the log.</param>
    /// <param name="controlTag">The marker tag that is fixed at the antenna.</param>
    /// <param name="kitTag">The tag on the one tool of the kit.</param>
    /// <param name="markerInterval">How often the marker tag fires. "Near start and end" and the longest silence are twice that and a half.</param>
    /// <param name="clockOffset">How far the reader's clock is ahead: only the caller can know it.</param>
    /// <param name="presence">When reads suffice; null for 3 looks on the one antenna.</param>
    public LogCloseout(IEnumerable<TagRead> reads, TagId controlTag, TagId kitTag, TimeSpan markerInterval, TimeSpan clockOffset, PresencePolicy? presence = null)
    {
        _reads = [.. reads.OrderBy(read => read.FirstSeen)];
        _clockOffset = clockOffset;
        _station = new ReadStation { Id = new StationId("pit-reader"), Antennas = [LogReader.Antenna], ControlTags = [new ControlTag(controlTag)] };
        DateTimeOffset since = DateTimeOffset.UnixEpoch;
        var tool = new Tool { Id = Tool, Description = "The one tool of an invented kit" };
        _kits = new KitRegister([new KitManifest(
            Kit, 1, "Invented kit of one tag", since, new Signature { By = new PersonId("P-1"), At = since }, [new ToolLine { Number = 1, Tool = tool }])]);
        _tags = new TagRegister([new TagBinding { Tag = kitTag, Tool = Tool, From = since }]);
        _sessions = new SessionPolicy { ControlTagEdge = markerInterval * 2.5, SilenceGapMax = markerInterval * 2.5, MaximumWindow = TimeSpan.FromHours(24) };
        _reconciler = new Reconciler(new ReconciliationPolicy
        {
            Sessions = _sessions,
            Presence = presence ?? new CountingPolicy { LooksNeeded = 3, AntennasNeeded = 1 },
        });
    }

    /// <summary>First and last moment of the log.</summary>
    public (DateTimeOffset First, DateTimeOffset Last) Span => (_reads[0].FirstSeen, _reads[^1].LastSeen);

    /// <summary>What is concluded of the kit if it was presented from <paramref name="from"/> to <paramref name="to"/>.</summary>
    public ReconciliationResult Conclude(DateTimeOffset from, DateTimeOffset to)
    {
        var presentation = new Presentation
        {
            Id = new SessionId(string.Create(CultureInfo.InvariantCulture, $"{from.UtcDateTime:yyyy-MM-dd'T'HH:mm:ss.fff'Z'}")),
            Station = _station,
            Kits = [Kit],
            From = from,
            Until = to,
            ReaderClockOffset = _clockOffset,
        };
        var builder = new ReadSessionBuilder(presentation, _sessions);
        foreach (TagRead read in Between(from + _clockOffset, to + _clockOffset))
        {
            builder.Add(read);
        }

        ReadSession session = builder.Close(to, _clockOffset);
        return _reconciler.Reconcile(new ReconciliationInput { Kits = _kits, Subject = Kit, Sessions = [session], Tags = _tags, AsOf = to });
    }

    private IEnumerable<TagRead> Between(DateTimeOffset from, DateTimeOffset to)
    {
        int first = Array.FindIndex(_reads, read => read.LastSeen >= from);
        return first < 0 ? [] : _reads.Skip(first).TakeWhile(read => read.FirstSeen < to);
    }
}
