using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Runtime.CompilerServices;
using System.Threading;
using System.Threading.Tasks;
using ToolLedger.Ledger;
using ToolLedger.Records;

namespace ToolLedger.Interchange;

/// <summary>A ledger as JSON Lines: one canonical entry a line, in UTF-8, lines ended by LF; CR LF is read too. A file is only ever added to.</summary>
/// <remarks>
/// A line that cannot be read is passed to the caller with its number and rule and does not stop the rest; without <c>onBadRow</c> the first one throws, since a record must not lose an entry in silence. A last line that was cut off by a
/// power failure is such a line. Several rules of one line are told as several rows. The methods are thread-safe; one enumeration belongs to one thread at a time.
/// </remarks>
public static class LedgerFile
{
    private const string OnlyLine = "line 1, column ";

    /// <summary>Reads the entries of a file.</summary>
    /// <param name="utf8">The whole file.</param>
    /// <param name="onBadRow">Is told of everything that is wrong with a line; null to throw at the first.</param>
    /// <returns>The entries, in the order of the file.</returns>
    /// <exception cref="ReadFileException">While reading: see the remarks.</exception>
    public static IEnumerable<LedgerEntry> JsonLines(ReadOnlyMemory<byte> utf8, Action<BadRow>? onBadRow = null)
    {
        var lines = new LineBuffer(LedgerEntry.MaxByteCount, utf8);
        while (TryRead(lines, onBadRow, out LedgerEntry? entry))
        {
            yield return entry!;
        }
    }

    /// <summary>Reads the entries of a stream.</summary>
    /// <param name="stream">The file; it is not closed.</param>
    /// <param name="onBadRow">Is told of everything that is wrong with a line; null to throw at the first.</param>
    /// <param name="cancellationToken">Ends the reading.</param>
    /// <returns>The entries, in the order of the file.</returns>
    /// <exception cref="ArgumentNullException">The stream is null.</exception>
    /// <exception cref="ReadFileException">While reading: see the remarks.</exception>
    /// <exception cref="OperationCanceledException">While reading: it was cancelled.</exception>
    public static IAsyncEnumerable<LedgerEntry> JsonLinesAsync(Stream stream, Action<BadRow>? onBadRow = null, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(stream);
        return ReadAsync(stream, onBadRow, cancellationToken);
    }

    /// <summary>Writes entries as lines.</summary>
    /// <param name="entries">The entries, in the order they are written.</param>
    /// <returns>The bytes: one line an entry, each ended by LF.</returns>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    public static byte[] ToJsonLines(IEnumerable<LedgerEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        using var stream = new MemoryStream();
        foreach (LedgerEntry entry in entries)
        {
            stream.Write(entry.ToJson());
            stream.WriteByte((byte)'\n');
        }

        return stream.ToArray();
    }

    /// <summary>Adds entries to a stream as lines.</summary>
    /// <param name="stream">Where to write, at its present place; it is flushed and not closed.</param>
    /// <param name="entries">The entries, in the order they are written.</param>
    /// <param name="cancellationToken">Ends the writing between two entries.</param>
    /// <returns>The writing.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="OperationCanceledException">While writing: it was cancelled.</exception>
    public static async Task WriteAsync(Stream stream, IEnumerable<LedgerEntry> entries, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(entries);
        foreach (LedgerEntry entry in entries)
        {
            cancellationToken.ThrowIfCancellationRequested();

            // A line goes out whole or not at all, as far as that is in our hands.
            await stream.WriteAsync((byte[])[.. entry.ToJson(), (byte)'\n'], CancellationToken.None).ConfigureAwait(false);
        }

        await stream.FlushAsync(cancellationToken).ConfigureAwait(false);
    }

    private static async IAsyncEnumerable<LedgerEntry> ReadAsync(Stream stream, Action<BadRow>? onBadRow, [EnumeratorCancellation] CancellationToken cancellationToken)
    {
        var lines = new LineBuffer(LedgerEntry.MaxByteCount);
        bool isEnded = false;
        while (!isEnded)
        {
            int count = await stream.ReadAsync(lines.Room(), cancellationToken).ConfigureAwait(false);
            lines.Filled(count);
            isEnded = count == 0;
            while (TryRead(lines, onBadRow, out LedgerEntry? entry))
            {
                yield return entry!;
            }
        }
    }

    private static bool TryRead(LineBuffer lines, Action<BadRow>? onBadRow, out LedgerEntry? entry)
    {
        while (lines.TryTakeLine(out ReadOnlySpan<byte> line))
        {
            line = lines.LineNumber == 1 ? LineBuffer.WithoutMark(line) : line;
            if (lines.IsTooLong)
            {
                Refuse(lines, line, new Reason(ReadFileRules.LineTooLong, ("limit", LedgerEntry.MaxByteCount.ToString(CultureInfo.InvariantCulture))), null, onBadRow);
            }
            else if (!LineBuffer.IsBlank(line))
            {
                if (LedgerEntry.TryParse(line, out entry, out IReadOnlyList<RecordIssue> issues))
                {
                    return true;
                }

                foreach (RecordIssue issue in issues)
                {
                    Refuse(lines, line, issue.Reason, issue.Place, onBadRow);
                }
            }
        }

        entry = null;
        return false;
    }

    private static void Refuse(LineBuffer lines, ReadOnlySpan<byte> line, Reason reason, string? place, Action<BadRow>? onBadRow)
    {
        // Where the line is no JSON, the place counts lines too, and an entry has one: the line of the file is told already.
        string? column = place is not null && place.StartsWith(OnlyLine, StringComparison.Ordinal) ? place[OnlyLine.Length..] : place;
        BadRow row = BadRow.Of(lines, line, new RowFault(reason, column));
        if (onBadRow is null)
        {
            throw new ReadFileException(row);
        }

        onBadRow(row);
    }
}
