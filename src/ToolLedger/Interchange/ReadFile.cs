using System;
using System.Collections.Generic;
using System.IO;
using System.Runtime.CompilerServices;
using System.Threading;
using ToolLedger.Reads;

namespace ToolLedger.Interchange;

/// <summary>Reads files of tag reads, row by row: JSON Lines and CSV, in UTF-8 with or without a byte order mark, lines ended
/// by LF or CR LF.</summary>
/// <remarks>
/// <para>A row that cannot be read is passed to the caller with its line number and rule and does not stop the rest, unless
/// the options say so or nobody is there to be told: without <c>onBadRow</c> the first one throws. A CSV header that does
/// not fit, a missing one, and UTF-16 throw always, because then no row can be read.</para>
/// <para>However a stream is cut into pieces, the rows are the same. Memory does not grow with the file; a good row costs
/// none. The methods are thread-safe; one enumeration belongs to one thread at a time.</para>
/// </remarks>
public static class ReadFile
{
    private const int PlainBatch = 16;

    /// <summary>Reads JSON Lines: one JSON object a line, for example
    /// <c>{"epc":"3034257BF7194E4000001A85","antenna":1,"time":"2026-03-01T15:55:01.25Z","rssi":-61.5}</c>.</summary>
    /// <param name="utf8">The whole file.</param>
    /// <param name="options">How to read it; null for the library's own form.</param>
    /// <param name="onBadRow">Is told of every bad row; null to throw at the first one.</param>
    /// <returns>The reads, in the order of the file.</returns>
    /// <exception cref="ArgumentException">Two columns have one name, or the options contradict each other.</exception>
    /// <exception cref="ReadFileException">While reading: see the remarks.</exception>
    public static IEnumerable<TagRead> JsonLines(ReadOnlyMemory<byte> utf8, ReadFileOptions? options = null, Action<BadRow>? onBadRow = null)
    {
        options = ReadFileOptions.Checked(options);
        return Read(utf8, new JsonRowParser(options), options, onBadRow);
    }

    /// <summary>Reads CSV (RFC 4180) with a header line, for example <c>epc,antenna,time,rssi</c>. A field in quotation marks
    /// ends on its line; spaces around a field do not count.</summary>
    /// <param name="utf8">The whole file.</param>
    /// <param name="options">How to read it; null for the library's own form.</param>
    /// <param name="onBadRow">Is told of every bad row; null to throw at the first one.</param>
    /// <returns>The reads, in the order of the file.</returns>
    /// <exception cref="ArgumentException">Two columns have one name, or the options contradict each other.</exception>
    /// <exception cref="ReadFileException">While reading: see the remarks.</exception>
    public static IEnumerable<TagRead> Csv(ReadOnlyMemory<byte> utf8, ReadFileOptions? options = null, Action<BadRow>? onBadRow = null)
    {
        options = ReadFileOptions.Checked(options);
        return Read(utf8, new CsvRowParser(options), options, onBadRow);
    }

    /// <summary>Reads JSON Lines from a stream. See <see cref="JsonLines"/>.</summary>
    /// <param name="stream">The file; it is not closed.</param>
    /// <param name="options">How to read it; null for the library's own form.</param>
    /// <param name="onBadRow">Is told of every bad row; null to throw at the first one.</param>
    /// <param name="cancellationToken">Ends the reading.</param>
    /// <returns>The reads, in the order of the file.</returns>
    /// <exception cref="ArgumentNullException">The stream is null.</exception>
    /// <exception cref="ArgumentException">Two columns have one name, or the options contradict each other.</exception>
    /// <exception cref="ReadFileException">While reading: see the remarks.</exception>
    /// <exception cref="OperationCanceledException">While reading: it was cancelled.</exception>
    public static IAsyncEnumerable<TagRead> JsonLinesAsync(
        Stream stream, ReadFileOptions? options = null, Action<BadRow>? onBadRow = null, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(stream);
        options = ReadFileOptions.Checked(options);
        return ReadAsync(stream, new JsonRowParser(options), options, onBadRow, cancellationToken);
    }

    /// <summary>Reads CSV from a stream. See <see cref="Csv"/>.</summary>
    /// <param name="stream">The file; it is not closed.</param>
    /// <param name="options">How to read it; null for the library's own form.</param>
    /// <param name="onBadRow">Is told of every bad row; null to throw at the first one.</param>
    /// <param name="cancellationToken">Ends the reading.</param>
    /// <returns>The reads, in the order of the file.</returns>
    /// <exception cref="ArgumentNullException">The stream is null.</exception>
    /// <exception cref="ArgumentException">Two columns have one name, or the options contradict each other.</exception>
    /// <exception cref="ReadFileException">While reading: see the remarks.</exception>
    /// <exception cref="OperationCanceledException">While reading: it was cancelled.</exception>
    public static IAsyncEnumerable<TagRead> CsvAsync(
        Stream stream, ReadFileOptions? options = null, Action<BadRow>? onBadRow = null, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(stream);
        options = ReadFileOptions.Checked(options);
        return ReadAsync(stream, new CsvRowParser(options), options, onBadRow, cancellationToken);
    }

    /// <summary>Opens JSON Lines for reading many rows at once: the quickest way. See <see cref="JsonLines"/>.</summary>
    /// <param name="utf8">The whole file.</param>
    /// <param name="options">How to read it; null for the library's own form.</param>
    /// <param name="onBadRow">Is told of every bad row; null to throw at the first one.</param>
    /// <returns>A reader at the start of the file.</returns>
    /// <exception cref="ArgumentException">Two columns have one name, or the options contradict each other.</exception>
    public static ReadFileReader OpenJsonLines(ReadOnlyMemory<byte> utf8, ReadFileOptions? options = null, Action<BadRow>? onBadRow = null)
    {
        options = ReadFileOptions.Checked(options);
        return new ReadFileReader(utf8, new JsonRowParser(options), options, onBadRow);
    }

    /// <summary>Opens JSON Lines from a stream for reading many rows at once. See <see cref="JsonLines"/>.</summary>
    /// <param name="stream">The file; it is not closed.</param>
    /// <param name="options">How to read it; null for the library's own form.</param>
    /// <param name="onBadRow">Is told of every bad row; null to throw at the first one.</param>
    /// <returns>A reader at the start of the file.</returns>
    /// <exception cref="ArgumentNullException">The stream is null.</exception>
    /// <exception cref="ArgumentException">Two columns have one name, or the options contradict each other.</exception>
    public static ReadFileReader OpenJsonLinesStream(Stream stream, ReadFileOptions? options = null, Action<BadRow>? onBadRow = null)
    {
        ArgumentNullException.ThrowIfNull(stream);
        options = ReadFileOptions.Checked(options);
        return new ReadFileReader(stream, new JsonRowParser(options), options, onBadRow);
    }

    /// <summary>Opens CSV for reading many rows at once: the quickest way. See <see cref="Csv"/>.</summary>
    /// <param name="utf8">The whole file.</param>
    /// <param name="options">How to read it; null for the library's own form.</param>
    /// <param name="onBadRow">Is told of every bad row; null to throw at the first one.</param>
    /// <returns>A reader at the start of the file.</returns>
    /// <exception cref="ArgumentException">Two columns have one name, or the options contradict each other.</exception>
    public static ReadFileReader OpenCsv(ReadOnlyMemory<byte> utf8, ReadFileOptions? options = null, Action<BadRow>? onBadRow = null)
    {
        options = ReadFileOptions.Checked(options);
        return new ReadFileReader(utf8, new CsvRowParser(options), options, onBadRow);
    }

    /// <summary>Opens CSV from a stream for reading many rows at once. See <see cref="Csv"/>.</summary>
    /// <param name="stream">The file; it is not closed.</param>
    /// <param name="options">How to read it; null for the library's own form.</param>
    /// <param name="onBadRow">Is told of every bad row; null to throw at the first one.</param>
    /// <returns>A reader at the start of the file.</returns>
    /// <exception cref="ArgumentNullException">The stream is null.</exception>
    /// <exception cref="ArgumentException">Two columns have one name, or the options contradict each other.</exception>
    public static ReadFileReader OpenCsvStream(Stream stream, ReadFileOptions? options = null, Action<BadRow>? onBadRow = null)
    {
        ArgumentNullException.ThrowIfNull(stream);
        options = ReadFileOptions.Checked(options);
        return new ReadFileReader(stream, new CsvRowParser(options), options, onBadRow);
    }

    private static IEnumerable<TagRead> Read(ReadOnlyMemory<byte> utf8, RowParser parser, ReadFileOptions options, Action<BadRow>? onBadRow)
    {
        var rows = new RowReader(new LineBuffer(options.LineLengthMax, utf8), parser, options, onBadRow);
        var plain = new TagRead[PlainBatch];
        do
        {
            // Never past a row that is not plain: a bad one is told when it is reached, and not before the reads in front of it are taken.
            int count;
            while ((count = rows.ReadPlain(plain)) > 0)
            {
                for (int i = 0; i < count; i++)
                {
                    yield return plain[i];
                }
            }

            if (!rows.TryRead(out plain[0]))
            {
                rows.End();
                yield break;
            }

            yield return plain[0];
        }
        while (true);
    }

    private static async IAsyncEnumerable<TagRead> ReadAsync(
        Stream stream, RowParser parser, ReadFileOptions options, Action<BadRow>? onBadRow, [EnumeratorCancellation] CancellationToken cancellationToken)
    {
        var lines = new LineBuffer(options.LineLengthMax);
        var rows = new RowReader(lines, parser, options, onBadRow);
        var plain = new TagRead[PlainBatch];
        bool isEnded = false;
        while (!isEnded)
        {
            isEnded = lines.Filled(await stream.ReadAsync(lines.Room(), cancellationToken).ConfigureAwait(false));
            do
            {
                int count;
                while ((count = rows.ReadPlain(plain)) > 0)
                {
                    for (int i = 0; i < count; i++)
                    {
                        yield return plain[i];
                    }
                }

                if (!rows.TryRead(out plain[0]))
                {
                    break;
                }

                yield return plain[0];
            }
            while (true);
        }

        rows.End();
    }
}
