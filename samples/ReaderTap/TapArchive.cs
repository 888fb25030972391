using System;
using System.Buffers;
using System.Collections.Generic;
using System.IO;
using ToolLedger.Interchange;
using ToolLedger.Reads;

namespace ReaderTap;

/// <summary>Keeps the reads of a session as JSON Lines, and beside them the presentation sheet with all that was lost: reads alone would make a replay
/// look more complete than the session was.</summary>
internal sealed class TapArchive : IDisposable
{
    private readonly string _path;
    private readonly Presentation _presentation;
    private readonly FileStream _file;
    private readonly ArrayBufferWriter<byte> _lines = new();
    private readonly ReadFileWriter _writer;

    /// <exception cref="TapException">The file cannot be written.</exception>
    internal TapArchive(string path, Presentation presentation)
    {
        _path = path;
        _presentation = presentation;
        _writer = ReadFileWriter.JsonLines(_lines, ReadFileOptions.Archive);
        _file = Try(() =>
        {
            // An archive without its sheet is one that was not finished: no old sheet may stand beside a new one.
            File.Delete(TapOptions.SheetOf(path));
            return new FileStream(path, FileMode.Create, FileAccess.Write);
        });
    }

    /// <exception cref="TapException">The file cannot be written.</exception>
    internal void Add(ReadOnlySpan<TagRead> reads)
    {
        foreach (TagRead read in reads)
        {
            _writer.Write(read);
        }

        Try(() =>
        {
            _file.Write(_lines.WrittenSpan);
            return _file;
        });
        _lines.ResetWrittenCount();
    }

    /// <summary>Ends the archive.</summary>
    /// <exception cref="TapException">The sheet cannot be written.</exception>
    internal void Close(IReadOnlyList<ReportedLoss> losses) => Try(() =>
    {
        _file.Flush(flushToDisk: true);
        var sheet = new Presentation
        {
            Id = _presentation.Id,
            Station = _presentation.Station,
            Kits = _presentation.Kits,
            From = _presentation.From,
            Until = _presentation.Until,
            PassStarts = _presentation.PassStarts,
            ReaderClockOffset = _presentation.ReaderClockOffset,
            ReaderClockOffsetAfter = _presentation.ReaderClockOffsetAfter,
            Losses = losses,
            NearbyKits = _presentation.NearbyKits,
            SurroundingsChanges = _presentation.SurroundingsChanges,
            TimeSource = _presentation.TimeSource,
        };
        File.WriteAllBytes(TapOptions.SheetOf(_path), sheet.ToJson());
        return _file;
    });

    public void Dispose() => _file.Dispose();

    private FileStream Try(Func<FileStream> write)
    {
        try
        {
            return write();
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new TapException(ExitCodes.Usage, $"{_path} cannot be written: {problem.Message}");
        }
    }
}
