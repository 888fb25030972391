using System;
using System.Collections.Generic;
using ToolLedger.Reads;
using ToolLedger.Records;

namespace ToolLedger.Interchange.Llrp;

/// <summary>Feeds the messages of one reader into a session: reads as reads, and everything that means "this window is not complete" as a loss, so
/// that nothing is concluded from silence.</summary>
/// <remarks>
/// <para>Which reader it is, the presentation of the session says; a frame does not. What means which loss:</para>
/// <list type="bullet">
/// <item>ReportBufferOverflowError: <see cref="SessionLoss.BufferOverflow"/>.</item>
/// <item>AntennaEvent, disconnected: <see cref="SessionLoss.AntennaDisconnected"/>, of any antenna where the number is none of 1 to 255. That it comes
/// back later does not mend the window.</item>
/// <item>ReaderExceptionEvent, ERROR_MESSAGE: <see cref="SessionLoss.ReaderFault"/>.</item>
/// <item>ConnectionCloseEvent, CLOSE_CONNECTION_RESPONSE, a connection attempt that failed: <see cref="SessionLoss.ConnectionClosed"/>.</item>
/// <item>A report or notification that cannot be read or placed: <see cref="SessionLoss.DecodeError"/>.</item>
/// <item>A stream that ended with a fault: <see cref="SessionLoss.StreamLost"/>.</item>
/// </list>
/// <para>An empty report is no loss and no look. Keep-alives are for the host to answer. Not thread-safe: one stream, one thread at a time.</para>
/// </remarks>
public sealed class LlrpSessionFeed
{
    private const int BatchLength = 128;
    private const int FailedStatusMax = 3;

    private readonly ReadSessionBuilder _session;
    private readonly LlrpReadBuilder _reads;
    private readonly Action<LlrpFault>? _onFault;
    private readonly Action<ReadOnlySpan<TagRead>>? _onReads;
    private readonly TagRead[] _batch = new TagRead[BatchLength];
    private long _eventFaultCount;
    private bool _isStreamLost;

    /// <summary>Makes a feed.</summary>
    /// <param name="session">The session; the feed does not close it.</param>
    /// <param name="options">How reads are made; null for the defaults. The source of times must be that of the presentation.</param>
    /// <param name="onFault">Is told of every fault, for a log; null for nobody.</param>
    /// <param name="onReads">Is given the reads of every message before the session judges them, for an archive; null for nobody.</param>
    /// <exception cref="ArgumentNullException">The session is null.</exception>
    public LlrpSessionFeed(
        ReadSessionBuilder session, LlrpReadOptions? options = null, Action<LlrpFault>? onFault = null, Action<ReadOnlySpan<TagRead>>? onReads = null)
    {
        ArgumentNullException.ThrowIfNull(session);
        _session = session;
        _onFault = onFault;
        _onReads = onReads;
        _reads = new LlrpReadBuilder(options, onFault);
    }

    /// <summary>How many reads were made of reports.</summary>
    public long ReadCount => _reads.ReadCount;

    /// <summary>How many reads the session accepted.</summary>
    public long AcceptedCount { get; private set; }

    /// <summary>How many faults there were, that of the stream included.</summary>
    public long FaultCount => _reads.FaultCount + _eventFaultCount + (_isStreamLost ? 1 : 0);

    /// <summary>Takes a message.</summary>
    /// <param name="message">The message.</param>
    /// <param name="arrival">When it arrived at the host, by the host's clock.</param>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside the years 1970 to 2999.</exception>
    /// <exception cref="InvalidOperationException">The session is closed.</exception>
    public void Add(LlrpMessage message, DateTimeOffset arrival)
    {
        RecordTime.Require(arrival, nameof(arrival));
        switch (message.Type)
        {
            case LlrpMessageType.RoAccessReport:
                AddReports(message, arrival);
                break;
            case LlrpMessageType.ReaderEventNotification:
                AddEvents(message, arrival);
                break;
            case LlrpMessageType.ErrorMessage:
                _session.ReportLoss(SessionLoss.ReaderFault, arrival);
                break;
            case LlrpMessageType.CloseConnectionResponse:
                _session.ReportLoss(SessionLoss.ConnectionClosed, arrival);
                break;
            default:
                break;
        }
    }

    /// <summary>Looks at the stream before the session is closed; the connection itself may stay open for the next one.</summary>
    /// <param name="decoder">The decoder of the stream. Of a recording, its end was stated before.</param>
    /// <param name="at">When, by the host's clock.</param>
    /// <remarks>A fault of the stream is reported. So is a message of which only a part has come, as a decode error: it may hold reads of
    /// this session.</remarks>
    /// <exception cref="ArgumentNullException">The decoder is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside the years 1970 to 2999.</exception>
    /// <exception cref="InvalidOperationException">The session is closed.</exception>
    public void Finish(LlrpDecoder decoder, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(decoder);
        if (decoder.Fault is { } fault)
        {
            ReportStream(fault, at);
        }
        else if (decoder.IsInsideMessage)
        {
            _session.ReportLoss(SessionLoss.DecodeError, at);
        }
    }

    /// <summary>Says that the connection to the reader ended while the session was open.</summary>
    /// <param name="decoder">The decoder of the stream; its end is stated to it.</param>
    /// <param name="at">When, by the host's clock.</param>
    /// <exception cref="ArgumentNullException">The decoder is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside the years 1970 to 2999.</exception>
    /// <exception cref="InvalidOperationException">The session is closed.</exception>
    public void ConnectionEnded(LlrpDecoder decoder, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(decoder);
        _session.ReportLoss(SessionLoss.ConnectionClosed, at);
        if (decoder.End() is { } fault)
        {
            ReportStream(fault, at);
        }
    }

    private void AddReports(in LlrpMessage message, DateTimeOffset arrival)
    {
        long faults = _reads.FaultCount;
        LlrpReports reports = message.Reports;
        int count;
        do
        {
            count = _reads.Read(ref reports, arrival, _batch);
            _onReads?.Invoke(_batch.AsSpan(0, count));
            AcceptedCount += _session.AddRange(_batch.AsSpan(0, count));
        }
        while (count == _batch.Length);

        // Once for a message: a session counts losses, and its log should not have a line for each tag.
        if (_reads.FaultCount > faults)
        {
            _session.ReportLoss(SessionLoss.DecodeError, arrival);
        }
    }

    private void AddEvents(in LlrpMessage message, DateTimeOffset arrival)
    {
        if (!message.TryReadEvents(out IReadOnlyList<LlrpReaderEvent> events, out LlrpFault fault))
        {
            _eventFaultCount++;
            _onFault?.Invoke(fault);
            _session.ReportLoss(SessionLoss.DecodeError, arrival);
        }

        foreach (LlrpReaderEvent what in events)
        {
            if (LossOf(what) is { } loss)
            {
                bool hasPort = loss == SessionLoss.AntennaDisconnected && what.AntennaId is >= 1 and <= byte.MaxValue;
                _session.ReportLoss(loss, arrival, hasPort ? new AntennaPort((byte)what.AntennaId.GetValueOrDefault()) : default);
            }
        }
    }

    private static SessionLoss? LossOf(LlrpReaderEvent what) => what.Kind switch
    {
        LlrpEventKind.BufferOverflow => SessionLoss.BufferOverflow,
        LlrpEventKind.Antenna when what.EventType != 1 => SessionLoss.AntennaDisconnected,
        LlrpEventKind.ReaderException => SessionLoss.ReaderFault,
        LlrpEventKind.ConnectionClose => SessionLoss.ConnectionClosed,
        LlrpEventKind.ConnectionAttempt when what.ConnectionStatus is >= 1 and <= FailedStatusMax => SessionLoss.ConnectionClosed,
        _ => null,
    };

    private void ReportStream(in LlrpFault fault, DateTimeOffset at)
    {
        if (!_isStreamLost)
        {
            _isStreamLost = true;
            _onFault?.Invoke(fault);
            _session.ReportLoss(SessionLoss.StreamLost, at);
        }
    }
}
