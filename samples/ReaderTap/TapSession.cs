using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using ToolLedger.Interchange;
using ToolLedger.Interchange.Llrp;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Reports;
using ToolLedger.Tools;

namespace ReaderTap;

/// <summary>One presentation: the bytes of a reader in, a line for each tool that answers for the first time, a report at the end.</summary>
internal sealed class TapSession
{
    private const byte OperationEnded = 1;
    private const int BatchLength = 128;

    private readonly TapFiles _files;
    private readonly TextWriter _output;
    private readonly ReadSessionBuilder _builder;
    private readonly LlrpDecoder _decoder = new();
    private readonly LlrpSessionFeed _feed;
    private readonly HashSet<ToolId> _heard = [];
    private readonly DateTimeOffset _until;
    private readonly TapArchive? _archive;
    private long _replayed;
    private long _replayedAccepted;

    public TapSession(TapFiles files, TextWriter output, TapArchive? archive)
    {
        _files = files;
        _output = output;
        _until = files.Presentation.Until!.Value;
        _builder = new ReadSessionBuilder(files.Presentation, files.Policy.Sessions);
        _feed = new LlrpSessionFeed(
            _builder, new LlrpReadOptions { TimeSource = files.Presentation.TimeSource }, fault => output.WriteLine($"  not usable: {fault}"), Keep);
        _archive = archive;
    }

    /// <summary>Whether the reader said that its operation ended.</summary>
    public bool IsOperationEnded { get; private set; }

    /// <summary>Takes the next bytes.</summary>
    /// <param name="bytes">The bytes.</param>
    /// <param name="arrival">When they arrived.</param>
    /// <param name="answer">Writes what the reader is owed for them.</param>
    public void Take(ReadOnlySpan<byte> bytes, DateTimeOffset arrival, LlrpWriter? answer)
    {
        while (_decoder.TryRead(ref bytes, out LlrpMessage message))
        {
            _feed.Add(message, arrival);
            switch (message.Type)
            {
                case LlrpMessageType.Keepalive: answer?.WriteKeepaliveAck(message.Id); break;
                case LlrpMessageType.RoAccessReport: Show(message.Reports); break;
                case LlrpMessageType.ReaderEventNotification: Show(message); break;
                default: break;
            }
        }
    }

    /// <summary>Takes reads that were kept. A row that cannot be read may have been the tag that is missed, so it is a loss.</summary>
    public void Replay(byte[] file)
    {
        ReadFileReader reader = ReadFile.OpenJsonLines(file, ReadFileOptions.Archive, row =>
        {
            _output.WriteLine($"  not usable: {row}");
            _builder.ReportLoss(SessionLoss.RowsRefused, _until);
        });
        var batch = new TagRead[BatchLength];
        int count;
        while ((count = reader.Read(batch)) > 0)
        {
            Keep(batch.AsSpan(0, count));
            _replayed += count;
            _replayedAccepted += _builder.AddRange(batch.AsSpan(0, count));
        }
    }

    /// <summary>Ends the session and writes the report.</summary>
    /// <param name="isConnectionLost">Whether the connection ended before the operation did.</param>
    /// <param name="isRecording">Whether the stream is a whole recording, whose end is the end.</param>
    /// <param name="at">When.</param>
    /// <returns>The exit code.</returns>
    public int Close(bool isConnectionLost, bool isRecording, DateTimeOffset at)
    {
        if (isRecording)
        {
            _decoder.End();
        }

        if (isConnectionLost)
        {
            _feed.ConnectionEnded(_decoder, at);
        }
        else
        {
            _feed.Finish(_decoder, at);
        }

        ReadSession session = _builder.Close(_until);
        _archive?.Close(session.Losses);
        ReconciliationResult result = new Reconciler(_files.Policy.Reconciliation).Reconcile(new ReconciliationInput
        {
            Kits = new KitRegister([_files.Manifest]),
            Subject = _files.Manifest.Id,
            Sessions = [session],
            Tags = _files.Tags,
            AsOf = _until,
        });
        var report = new ShiftReport(new ShiftReportInput
        {
            Results = [result],
            MadeAt = _until,
            PolicyName = _files.Policy.Name,
            PolicyDigest = _files.Policy.Digest,
        });
        _output.WriteLine($"{_feed.ReadCount + _replayed} reads, {_feed.AcceptedCount + _replayedAccepted} accepted, {_feed.FaultCount} faults.");
        _output.WriteLine();
        _output.Write(report.ToText());
        return result.Kit.State switch
        {
            KitState.Complete => ExitCodes.Complete,
            KitState.NoValidRead => ExitCodes.NoValidRead,
            _ => ExitCodes.OpenOrDiscrepant,
        };
    }

    private void Keep(ReadOnlySpan<TagRead> reads) => _archive?.Add(reads);

    private void Show(LlrpReports reports)
    {
        while (reports.TryRead(out LlrpTagReport report))
        {
            if (report.Fault is null && _files.Tags.FindLive(report.Tag, _files.Presentation.From) is { } binding
                && _files.Manifest.FindLine(binding.Tool) is { } line && _heard.Add(binding.Tool))
            {
                string antenna = report.AntennaId?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "not known";
                _output.WriteLine($"  heard: {binding.Tool} {line.Description}, antenna {antenna} ({_heard.Count} of {_files.Manifest.Lines.Count} tools heard, none concluded yet)");
            }
        }
    }

    private void Show(LlrpMessage message)
    {
        message.TryReadEvents(out IReadOnlyList<LlrpReaderEvent> events, out _);
        IsOperationEnded |= events.Any(what => what is { Kind: LlrpEventKind.RoSpec, EventType: OperationEnded });
        foreach (LlrpReaderEvent what in events.Where(what => what.Kind is LlrpEventKind.RoSpec or LlrpEventKind.BufferOverflow or LlrpEventKind.Antenna
            or LlrpEventKind.ReaderException or LlrpEventKind.ConnectionClose))
        {
            _output.WriteLine($"  reader: {what.Kind} {what.EventType} {what.AntennaId} {what.Message}".TrimEnd());
        }
    }
}
