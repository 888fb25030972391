using System;
using System.IO;
using System.Threading;
using System.Threading.Tasks;

namespace ToolLedger.Interchange;

/// <summary>Reads master inventory lists: CSV (RFC 4180) with a header line, in UTF-8 with or without a byte order mark, lines ended by LF or CR LF.</summary>
/// <remarks>
/// The columns are declared, never guessed. A row that is not understood is an issue and does not stop the rest; a header that does
/// not fit is one too, and then there are no lines. A field in quotation marks ends on its line; spaces around a field do not
/// count, and an empty field is no value. Alternates and the ids of other systems have no column. Bad data never throws. Thread-safe.
/// </remarks>
public static class MasterListFile
{
    /// <summary>Reads a list from its bytes.</summary>
    /// <param name="utf8">The whole file.</param>
    /// <param name="options">How to read it; null for the library's own form.</param>
    /// <returns>What was understood and what was not.</returns>
    public static MasterList ReadCsv(ReadOnlySpan<byte> utf8, MasterListOptions? options = null)
    {
        options ??= new MasterListOptions();
        var lines = new LineBuffer(options.LineLengthMax, utf8.ToArray());
        var reader = new MasterListReader(lines, options);
        reader.ReadRows();
        return reader.End();
    }

    /// <summary>Reads a list from a stream. See <see cref="ReadCsv"/>.</summary>
    /// <param name="stream">The file; it is not closed.</param>
    /// <param name="options">How to read it; null for the library's own form.</param>
    /// <param name="cancellationToken">Ends the reading.</param>
    /// <returns>What was understood and what was not.</returns>
    /// <exception cref="ArgumentNullException">The stream is null.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static Task<MasterList> ReadCsvAsync(Stream stream, MasterListOptions? options = null, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(stream);
        return ReadAsync(stream, options ?? new MasterListOptions(), cancellationToken);
    }

    private static async Task<MasterList> ReadAsync(Stream stream, MasterListOptions options, CancellationToken cancellationToken)
    {
        var lines = new LineBuffer(options.LineLengthMax);
        var reader = new MasterListReader(lines, options);
        bool isEnded = false;
        while (!isEnded)
        {
            int count = await stream.ReadAsync(lines.Room(), cancellationToken).ConfigureAwait(false);
            lines.Filled(count);
            isEnded = !reader.ReadRows() || count == 0;
        }

        return reader.End();
    }
}
