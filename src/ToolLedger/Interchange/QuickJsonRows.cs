using System;
using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using ToolLedger.Reads;

namespace ToolLedger.Interchange;

/// <summary>
/// Reads lines whose members and spaces stood like that before, in any order: of each value it is known what stood behind it and which value came next. Only
/// values are read, in their commonest spelling; everything else is compared with what the careful way has read as JSON.
/// </summary>
internal sealed class QuickJsonRows
{
    private const int StepsPerValue = 5;

    // Two values for each column, in quotation marks and without, and the beginning of a line.
    private const int LineStart = 2 * ((int)ReadColumn.ReportId + 1);
    private const int LineEnd = LineStart + 1;

    private readonly QuickJsonStep[] _steps = new QuickJsonStep[(LineStart + 1) * StepsPerValue];
    private readonly QuickFields _fields;
    private readonly int _lengthMax;

    internal QuickJsonRows(ReadFileOptions options)
    {
        _fields = new QuickFields(options);
        _lengthMax = options.LineLengthMax;
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
        nint limit = bytes.Length - QuickFields.Reach;
        ref byte text = ref MemoryMarshal.GetReference(bytes);
        while (_fields.IsUsable && count < destination.Length && ReadLine(ref text, at, limit, ref destination[count]) is >= 0 and nint end)
        {
            at = end;
            count++;
        }

        length = (int)at;
        return count;
    }

    /// <summary>Remembers what stands between the values of a line that the careful way has read.</summary>
    /// <param name="line">The line without its end: plain JSON.</param>
    /// <param name="values">Its values in their order.</param>
    internal void Learn(ReadOnlySpan<byte> line, ReadOnlySpan<QuickJsonValue> values)
    {
        int state = LineStart;
        int at = 0;
        foreach (QuickJsonValue value in values)
        {
            // Hexadecimal digits are no number: without quotation marks they would be read as more than they are.
            if (value is { IsQuoted: false, Column: ReadColumn.Tag or ReadColumn.Tid })
            {
                return;
            }

            int next = (2 * (int)value.Column) + (value.IsQuoted ? 1 : 0);
            Learn(state, line[at..value.Start], next);
            state = next;
            at = value.End;
        }

        Learn(state, line[at..], LineEnd);
    }

    private void Learn(int state, ReadOnlySpan<byte> text, int next)
    {
        Span<QuickJsonStep> steps = _steps.AsSpan(state * StepsPerValue, StepsPerValue - 1);
        Span<byte> padded = stackalloc byte[QuickFields.Reach];
        if (text.Length > padded.Length)
        {
            return;
        }

        // Compared as it will be: what lies behind the text does not count.
        padded.Clear();
        text.CopyTo(padded);
        foreach (ref QuickJsonStep step in steps)
        {
            if (step.Length == 0)
            {
                step = new QuickJsonStep(text, next);
                return;
            }

            if (step.Length == text.Length && step.Next == next && step.Fits(ref MemoryMarshal.GetReference(padded)))
            {
                return;
            }
        }
    }

    private nint ReadLine(ref byte text, nint start, nint limit, ref TagRead read)
    {
        nint at = start;
        uint given = 0;
        int state = LineStart;
        QuickFields fields = _fields;
        ref QuickJsonStep steps = ref MemoryMarshal.GetArrayDataReference(_steps);
        QuickFields.Begin(ref read);
        while (at <= limit)
        {
            ref QuickJsonStep step = ref Unsafe.Add(ref steps, (nint)(uint)(state * StepsPerValue));
            if (!step.Fits(ref Unsafe.Add(ref text, at)))
            {
                step = ref FindOther(ref Unsafe.Add(ref text, at), ref step);
            }

            at += step.Length;
            state = step.Next;
            if (state == LineEnd)
            {
                nint length = at - start;
                at = at <= limit ? EndOfLine(ref text, at) : DigitText.No;
                return at >= 0 && length <= _lengthMax && fields.TryEnd(given, ref read) ? at : DigitText.No;
            }

            var column = (ReadColumn)(state >> 1);
            uint bit = 1u << (int)column;
            if (at > limit || (given & bit) != 0 || step.Length == 0)
            {
                return DigitText.No;
            }

            if (column == ReadColumn.Ignored)
            {
                at = (state & 1) != 0 ? SkipText(ref text, at, limit) : SkipNumber(ref text, at, limit);
            }
            else
            {
                at = fields.Read(column, ref text, at, ref read);
                given |= bit;
            }

            if (at < 0)
            {
                return DigitText.No;
            }
        }

        return DigitText.No;
    }

    // Behind the steps of each value stands one without a length, which fits everything and leads nowhere.
    private static ref QuickJsonStep FindOther(scoped ref byte text, ref QuickJsonStep first)
    {
        for (int i = 1; ; i++)
        {
            ref QuickJsonStep step = ref Unsafe.Add(ref first, i);
            if (step.Fits(ref text))
            {
                return ref step;
            }
        }
    }

    private static nint EndOfLine(ref byte text, nint at)
    {
        byte end = Unsafe.Add(ref text, at);
        return end == '\n' ? at + 1 : end == '\r' && Unsafe.Add(ref text, at + 1) == '\n' ? at + 2 : DigitText.No;
    }

    // Printable ASCII up to the quotation mark, and no escape.
    private static nint SkipText(ref byte text, nint at, nint limit)
    {
        while (at <= limit)
        {
            Vector128<byte> part = Vector128.LoadUnsafe(ref text, (nuint)at);
            uint ends = (Vector128.Equals(part, Vector128.Create((byte)'"')) | Vector128.Equals(part, Vector128.Create((byte)'\\'))
                | Vector128.GreaterThan(part - Vector128.Create((byte)0x20), Vector128.Create((byte)(0x7E - 0x20)))).ExtractMostSignificantBits();
            if (ends != 0)
            {
                at += BitOperations.TrailingZeroCount(ends);
                return Unsafe.Add(ref text, at) == '"' ? at : DigitText.No;
            }

            at += Vector128<byte>.Count;
        }

        return DigitText.No;
    }

    // Minus, digits without a leading zero, and decimals.
    private static nint SkipNumber(ref byte text, nint at, nint limit)
    {
        at += Unsafe.Add(ref text, at) == '-' ? 1 : 0;
        nint start = at;
        at = SkipDigits(ref text, at, limit);
        if (at == start || (at - start > 1 && Unsafe.Add(ref text, start) == '0'))
        {
            return DigitText.No;
        }

        if (Unsafe.Add(ref text, at) == '.')
        {
            start = ++at;
            at = SkipDigits(ref text, at, limit);
        }

        return at > start && at <= limit ? at : DigitText.No;
    }

    private static nint SkipDigits(ref byte text, nint at, nint limit)
    {
        while (at <= limit && (uint)(Unsafe.Add(ref text, at) - '0') <= 9)
        {
            at++;
        }

        return at;
    }
}
