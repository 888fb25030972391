using System;

namespace ToolLedger.Interchange;

/// <summary>Cuts bytes into lines, however they come in. Holds at most one line and one piece.</summary>
/// <remarks>A line ends with LF or CR LF, or with the file. A line over the limit is given once, cut to the limit, and the
/// rest of it is passed over.</remarks>
internal sealed class LineBuffer
{
    private readonly int _lineLengthMax;
    private ReadOnlyMemory<byte> _bytes;
    private byte[] _own = [];
    private int _start;
    private int _end;
    private int _searched;
    private bool _isComplete;
    private bool _isSkipping;

    /// <summary>A buffer that is filled piece by piece.</summary>
    internal LineBuffer(int lineLengthMax) => _lineLengthMax = lineLengthMax;

    /// <summary>A buffer over the whole file.</summary>
    internal LineBuffer(int lineLengthMax, ReadOnlyMemory<byte> whole)
    {
        _lineLengthMax = lineLengthMax;
        _bytes = whole;
        _end = whole.Length;
        _isComplete = true;
    }

    /// <summary>The number of the line taken last, from 1.</summary>
    internal long LineNumber { get; private set; }

    /// <summary>Where the line taken last begins: bytes from the start of the file.</summary>
    internal long LineOffset { get; private set; }

    /// <summary>Whether the line taken last is over the limit.</summary>
    internal bool IsTooLong { get; private set; }

    // The place in the file of the first byte held.
    private long BaseOffset { get; set; }

    /// <summary>Whether the first line of a file shows the byte order mark of UTF-16, in either order.</summary>
    internal static bool IsUtf16(ReadOnlySpan<byte> line) => line.StartsWith<byte>([0xFF, 0xFE]) || line.StartsWith<byte>([0xFE, 0xFF]);

    /// <summary>The first line of a file without the byte order mark of UTF-8.</summary>
    internal static ReadOnlySpan<byte> WithoutMark(ReadOnlySpan<byte> line) => line.StartsWith<byte>([0xEF, 0xBB, 0xBF]) ? line[3..] : line;

    /// <summary>Whether a line holds nothing but spaces.</summary>
    internal static bool IsBlank(ReadOnlySpan<byte> line) => line.IsEmpty || (line[0] == ' ' && line.Trim((byte)' ').IsEmpty);

    /// <summary>What is held of the file from the next line on; empty while the rest of a line over the limit is passed over.</summary>
    internal ReadOnlySpan<byte> Held => _isSkipping ? default : _bytes.Span[_start.._end];

    /// <summary>Passes over whole lines that were read elsewhere.</summary>
    internal void PassLines(int length, int count)
    {
        LineNumber += count;
        Pass(length);
    }

    /// <summary>Takes the next line without its end; false when more bytes are needed, or at the end of the file.</summary>
    internal bool TryTakeLine(out ReadOnlySpan<byte> line)
    {
        while (true)
        {
            ReadOnlySpan<byte> held = _bytes.Span[_start.._end];
            int length = held[_searched..].IndexOf((byte)'\n');
            bool isEnded = length >= 0;
            length = isEnded ? length + _searched : held.Length;
            if (_isSkipping)
            {
                Pass(length + (isEnded ? 1 : 0));
                _isSkipping = !isEnded;
                if (isEnded)
                {
                    continue;
                }

                line = default;
                return false;
            }

            // One byte more than the limit may be the CR of a line end.
            bool tooLong = length > _lineLengthMax + 1 || (length > _lineLengthMax && (isEnded || _isComplete) && held[length - 1] != '\r');
            if (!isEnded && !tooLong && (!_isComplete || length == 0))
            {
                _searched = length;
                line = default;
                return false;
            }

            LineNumber++;
            LineOffset = BaseOffset + _start;
            IsTooLong = tooLong;
            line = tooLong ? held[.._lineLengthMax] : length > 0 && held[length - 1] == '\r' ? held[..(length - 1)] : held[..length];
            _isSkipping = tooLong && !isEnded;
            Pass(length + (isEnded ? 1 : 0));
            return true;
        }
    }

    /// <summary>Room for the next piece; what was taken before is overwritten.</summary>
    internal Memory<byte> Room()
    {
        const int PieceLength = 65_536;
        const int Enough = 4_096;
        int held = _end - _start;
        if (_own.Length - _end >= Enough)
        {
            return _own.AsMemory(_end);
        }

        byte[] target = _own.Length - held >= PieceLength ? _own : new byte[Math.Max(2 * PieceLength, held + (2 * PieceLength))];
        _own.AsSpan(_start, held).CopyTo(target);
        BaseOffset += _start;
        _own = target;
        _bytes = target;
        _start = 0;
        _end = held;
        return target.AsMemory(held);
    }

    /// <summary>Says how much of the room was filled; nothing means the end of the file.</summary>
    /// <returns>Whether it has ended.</returns>
    internal bool Filled(int count)
    {
        _end += count;
        return _isComplete = count == 0;
    }

    private void Pass(int length)
    {
        _start += length;
        _searched = 0;
    }
}
