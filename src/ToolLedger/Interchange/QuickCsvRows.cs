using System;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using ToolLedger.Reads;

namespace ToolLedger.Interchange;

/// <summary>Reads separated rows in the order that the header declares, as long as they have no quotation marks, no spaces, and fields in their commonest
/// spelling.</summary>
internal sealed class QuickCsvRows
{
    private readonly QuickFields _fields;
    private readonly ReadColumn[] _columns;
    private readonly byte _delimiter;
    private readonly int _lengthMax;
    private readonly uint _declared;

    internal QuickCsvRows(ReadFileOptions options, ReadColumn[] columns)
    {
        _fields = new QuickFields(options);
        _columns = columns;
        _delimiter = (byte)options.Delimiter;
        _lengthMax = options.LineLengthMax;
        foreach (ReadColumn column in columns)
        {
            _declared |= 1u << (int)column;
        }
    }

    /// <summary>Reads whole lines up to the first that is not plain.</summary>
    /// <param name="bytes">Begin with a line.</param>
    /// <param name="destination">Where the reads go.</param>
    /// <param name="length">How many bytes the lines have, with their ends.</param>
    /// <returns>How many lines were read.</returns>
    internal int Read(ReadOnlySpan<byte> bytes, Span<TagRead> destination, out int length)
    {
        int count = 0;
        nint at = 0;
        nint limit = bytes.Length - QuickFields.RowReach;
        ref byte text = ref MemoryMarshal.GetReference(bytes);
        while (_fields.IsUsable && count < destination.Length && ReadLine(ref text, at, limit, ref destination[count]) is >= 0 and nint end)
        {
            at = end;
            count++;
        }

        length = (int)at;
        return count;
    }

    private nint ReadLine(ref byte text, nint start, nint limit, ref TagRead read)
    {
        if (start > limit)
        {
            return DigitText.No;
        }

        // Checked once for all columns: each stands there once but for those that are ignored, and they are checked where they are.
        nint at = start;
        uint given = _declared;
        QuickFields fields = _fields;
        byte delimiter = _delimiter;
        ReadColumn[] columns = _columns;
        QuickFields.Begin(ref read);
        for (int i = 0; i < columns.Length; i++)
        {
            if (i > 0 && Unsafe.Add(ref text, at++) != delimiter)
            {
                return DigitText.No;
            }

            ReadColumn column = columns[i];
            byte first = Unsafe.Add(ref text, at);
            if (column == ReadColumn.Ignored)
            {
                at = Skip(ref text, at, limit);
            }
            else if (first != delimiter && first > '\r')
            {
                at = fields.Read(column, ref text, at, ref read);
            }
            else
            {
                given &= ~(1u << (int)column);
            }

            if (at < 0)
            {
                return DigitText.No;
            }
        }

        nint length = at - start;
        byte end = Unsafe.Add(ref text, at++);
        bool isLine = end == '\n' || (end == '\r' && Unsafe.Add(ref text, at++) == '\n');
        return isLine && length <= _lengthMax && fields.TryEnd(given, ref read) ? at : DigitText.No;
    }

    // To the delimiter or the end of the line. A field that begins with a quotation mark or a space is left to the careful way.
    private nint Skip(ref byte text, nint at, nint limit)
    {
        if (Unsafe.Add(ref text, at) is (byte)'"' or (byte)' ')
        {
            return DigitText.No;
        }

        while (at <= limit)
        {
            Vector128<byte> part = Vector128.LoadUnsafe(ref text, (nuint)at);
            uint ends = (Vector128.Equals(part, Vector128.Create(_delimiter)) | Vector128.Equals(part, Vector128.Create((byte)'\n')) | Vector128.Equals(part, Vector128.Create((byte)'\r')))
                .ExtractMostSignificantBits();
            if (ends != 0)
            {
                return at + System.Numerics.BitOperations.TrailingZeroCount(ends);
            }

            at += Vector128<byte>.Count;
        }

        return DigitText.No;
    }
}
