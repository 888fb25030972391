using System;
using System.IO;
using System.Threading;
using System.Threading.Tasks;
using ToolLedger.Reads;

namespace ToolLedger.Interchange;

/// <summary>Reads the rows of one file into the caller's memory, many at a time. Opened by <see cref="ReadFile"/>.</summary>
/// <remarks>
/// <para>The rows, bad rows and their order are those of the enumerations of <see cref="ReadFile"/>. Rows in their commonest spelling are read in one look;
/// everything else (escapes, quotation marks, another order of members, other spellings of times and numbers) is read with care, and so is every bad row.</para>
/// <para>What was read before a bad row ends the reading is given first, and the exception comes with the next call. Memory does not grow with the file; a
/// good row costs none. Not thread-safe.</para>
/// </remarks>
public sealed class ReadFileReader
{
    private readonly LineBuffer _lines;
    private readonly RowReader _rows;
    private readonly Stream? _stream;
    private ReadFileException? _refusal;
    private bool _isEnded;

    internal ReadFileReader(ReadOnlyMemory<byte> utf8, RowParser parser, ReadFileOptions options, Action<BadRow>? onBadRow)
    {
        _lines = new LineBuffer(options.LineLengthMax, utf8);
        _rows = new RowReader(_lines, parser, options, onBadRow);
        _isEnded = true;
    }

    internal ReadFileReader(Stream stream, RowParser parser, ReadFileOptions options, Action<BadRow>? onBadRow)
    {
        _lines = new LineBuffer(options.LineLengthMax);
        _rows = new RowReader(_lines, parser, options, onBadRow);
        _stream = stream;
    }

    /// <summary>How many reads were given.</summary>
    public long ReadCount { get; private set; }

    /// <summary>How many rows were refused.</summary>
    public long BadRowCount => _rows.BadRowCount;

    /// <summary>Reads the next rows.</summary>
    /// <param name="destination">Where the reads go; what lies behind the last one is not cleared.</param>
    /// <returns>How many there are; 0 only at the end of the file, or without room.</returns>
    /// <exception cref="ReadFileException">A bad row ended the reading: see <see cref="ReadFile"/>.</exception>
    public int Read(Span<TagRead> destination)
    {
        while (true)
        {
            int count = Take(destination);
            if (count > 0 || _isEnded || destination.IsEmpty)
            {
                return Counted(count, destination.IsEmpty);
            }

            _isEnded = _lines.Filled(_stream!.Read(_lines.Room().Span));
        }
    }

    /// <summary>Reads the next rows; waits for the stream where it has to.</summary>
    /// <param name="destination">Where the reads go; what lies behind the last one is not cleared.</param>
    /// <param name="cancellationToken">Ends the reading.</param>
    /// <returns>How many there are; 0 only at the end of the file, or without room.</returns>
    /// <exception cref="ReadFileException">A bad row ended the reading: see <see cref="ReadFile"/>.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public async ValueTask<int> ReadAsync(Memory<TagRead> destination, CancellationToken cancellationToken = default)
    {
        while (true)
        {
            int count = Take(destination.Span);
            if (count > 0 || _isEnded || destination.IsEmpty)
            {
                return Counted(count, destination.IsEmpty);
            }

            _isEnded = _lines.Filled(await _stream!.ReadAsync(_lines.Room(), cancellationToken).ConfigureAwait(false));
        }
    }

    private int Counted(int count, bool isWithoutRoom)
    {
        if (count == 0 && !isWithoutRoom)
        {
            _rows.End();
        }

        ReadCount += count;
        return count;
    }

    private int Take(Span<TagRead> destination)
    {
        if (_refusal is { } refusal)
        {
            _refusal = null;
            throw refusal;
        }

        int count = 0;
        try
        {
            while (count < destination.Length)
            {
                int plain = _rows.ReadPlain(destination[count..]);
                count += plain;
                if (count == destination.Length || !_rows.TryRead(out destination[count]))
                {
                    break;
                }

                count++;
            }
        }
        catch (ReadFileException exception) when (count > 0)
        {
            _refusal = exception;
        }

        return count;
    }
}
