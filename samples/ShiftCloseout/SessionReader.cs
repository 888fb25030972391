using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Threading;
using System.Threading.Tasks;
using ToolLedger.Interchange;
using ToolLedger.Reads;
using ToolLedger.Reports;

namespace ShiftCloseout;

/// <summary>Streams the reads of one presentation into a session. Memory depends on the tags, not on the number of reads.</summary>
internal sealed class SessionReader
{
    private readonly Presentation _presentation;
    private readonly SessionPolicy _policy;
    private readonly List<BadRow> _badRows = [];

    public SessionReader(Presentation presentation, SessionPolicy policy)
    {
        _presentation = presentation;
        _policy = policy;
    }

    /// <summary>The first refused rows.</summary>
    public IReadOnlyList<BadRow> BadRows => _badRows;

    /// <summary>How many rows were refused in all.</summary>
    public long BadRowCount { get; private set; }

    /// <summary>Reads the file and closes the session at <paramref name="to"/>.</summary>
    /// <returns>The session, and the digest of the bytes read.</returns>
    /// <exception cref="HostException">The file cannot be read.</exception>
    public async Task<(ReadSession Session, SourceDigest Source)> ReadAsync(
        InputFile file, ReadsFormat format, DateTimeOffset to, HostConsole console, CancellationToken cancellation)
    {
        await using Stream stream = file.Open();
        long length = stream.CanSeek ? stream.Length : 0;
        try
        {
            return await ReadsProgress.RunAsync(file.Name, length, console, async onProgress =>
            {
                await using var digested = new DigestStream(stream, onProgress);
                var builder = new ReadSessionBuilder(_presentation, _policy);
                await foreach (TagRead read in Rows(digested, file.Name, format, cancellation))
                {
                    builder.Add(read);
                }

                if (BadRowCount > 0)
                {
                    builder.ReportLoss(SessionLoss.RowsRefused, to);
                }

                ReadSession session = builder.Close(to, _presentation.ReaderClockOffsetAfter);
                return (session, new SourceDigest(file.Name, digested.Digest()));
            });
        }
        catch (ReadFileException error)
        {
            string place = error.Row is { } row ? string.Create(CultureInfo.InvariantCulture, $"line {row.LineNumber}: {row.Reason} ({row.Rule})") : error.Message;
            throw new HostException(ExitCodes.BadInput, $"{file.Name}: {place}");
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new HostException(ExitCodes.Usage, $"{file.Name}: cannot be read: {error.Message}");
        }
    }

    private IAsyncEnumerable<TagRead> Rows(Stream stream, string name, ReadsFormat format, CancellationToken cancellation) =>
        FormatOf(name, format) == ReadsFormat.Csv
            ? ReadFile.CsvAsync(stream, null, Note, cancellation)
            : ReadFile.JsonLinesAsync(stream, null, Note, cancellation);

    private void Note(BadRow row)
    {
        BadRowCount++;
        if (_badRows.Count < 10)
        {
            _badRows.Add(row);
        }
    }

    private static ReadsFormat FormatOf(string name, ReadsFormat format) => format != ReadsFormat.Auto
        ? format
        : Path.GetExtension(name).ToUpperInvariant() switch
        {
            ".CSV" => ReadsFormat.Csv,
            ".JSONL" or ".NDJSON" or ".JSON" => ReadsFormat.Jsonl,
            _ => throw new HostException(ExitCodes.Usage, $"{name}: the extension does not say whether this is CSV or JSON Lines. Add --reads-format."),
        };
}
