using System;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using ToolLedger.Reads;

namespace ToolLedger.Interchange;

/// <summary>Reads the commonest spelling of each form of an instant, eight digits at once. What it does not know is left to <see cref="TimeText"/>, which
/// gives the same instant for everything that both can read.</summary>
[StructLayout(LayoutKind.Auto)]
internal struct QuickTime
{
    private const int DateLength = 11;
    private const int TimeLength = 19;
    private const int OffsetLength = 6;
    private const int TickDigits = 7;
    private const ulong OffsetMask = 0x0000_FFFF_FFFF_FFFF;

    private readonly ReadTimeForm _form;
    private readonly bool _isEpoch;
    private readonly SiteCalendar? _calendar;

    // The second of the row before, in two overlapping pieces of its text: a reader reports many tags in each.
    private Vector128<byte> _secondStart;
    private Vector128<byte> _secondEnd;
    private long _secondTicks;

    // Its date up to the T, in two overlapping words, and its offset.
    private ulong _dateStart;
    private ulong _dateEnd;
    private ulong _offset;
    private long _dateTicks;
    private long _offsetTicks;

    internal QuickTime(ReadFileOptions options)
    {
        _form = options.TimeForm;
        _isEpoch = _form is not (ReadTimeForm.Iso8601WithOffset or ReadTimeForm.Iso8601Local);
        _calendar = options.Calendar;

        // No bytes of text.
        _offset = ulong.MaxValue;
        _secondStart = Vector128<byte>.AllBitsSet;
    }

    /// <summary>Reads an instant.</summary>
    /// <returns>The place behind it, or <see cref="DigitText.No"/>.</returns>
    /// <remarks>Not inlined, like the other fields of some length: together they would need more registers than there are.</remarks>
    [MethodImpl(MethodImplOptions.NoInlining)]
    internal nint Read(ref byte text, nint at, out long ticks)
    {
        if (_isEpoch)
        {
            return ReadEpoch(ref text, at, out ticks);
        }

        nint end = ReadIso(ref text, at, out long found);
        ticks = found;
        return IsInRange(found) ? end : DigitText.No;
    }

    private static bool IsInRange(long ticks) => (ulong)(ticks - TimeText.FirstTicks) < (ulong)(TimeText.EndTicks - TimeText.FirstTicks);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private nint ReadIso(ref byte text, nint at, out long ticks)
    {
        ticks = 0;
        Vector128<byte> start = Vector128.LoadUnsafe(ref text, (nuint)at);
        Vector128<byte> end = Vector128.LoadUnsafe(ref text, (nuint)(at + TimeLength - Vector128<byte>.Count));
        if (((start ^ _secondStart) | (end ^ _secondEnd)) != Vector128<byte>.Zero && !TryLearnSecond(ref text, at))
        {
            return DigitText.No;
        }

        ticks = _secondTicks;
        at += TimeLength;
        if (Unsafe.Add(ref text, at) == '.')
        {
            int count = DigitText.CountDigits(DigitText.Load(ref text, at + 1), out ulong values);
            if (count is 0 or > TickDigits)
            {
                return DigitText.No;
            }

            // Zeros behind the digits instead of what stands there: eight digits, of which the last is one of them.
            ticks += DigitText.Combine(values & ((1UL << (8 * count)) - 1)) / 10;
            at += 1 + count;
        }

        // Whatever else follows is not what follows a field.
        if (_calendar is not null)
        {
            return at;
        }

        if (Unsafe.Add(ref text, at) == 'Z')
        {
            return at + 1;
        }

        if ((DigitText.Load(ref text, at) & OffsetMask) != _offset && !TryLearnOffset(ref text, at))
        {
            return DigitText.No;
        }

        ticks -= _offsetTicks;
        return at + OffsetLength;
    }

    private nint ReadEpoch(ref byte text, nint at, out long ticks)
    {
        (int decimals, long unit) = _form switch
        {
            ReadTimeForm.EpochSeconds => (7, TimeSpan.TicksPerSecond),
            ReadTimeForm.EpochMilliseconds => (4, TimeSpan.TicksPerMillisecond),
            _ => (1, TimeSpan.TicksPerMicrosecond),
        };
        ticks = 0;
        at = DigitText.ReadNumber(ref text, at, out ulong whole);
        if (at < 0 || whole > (ulong)(TimeText.EndTicks / unit))
        {
            return DigitText.No;
        }

        ticks = TimeText.FirstTicks + ((long)whole * unit);
        if (Unsafe.Add(ref text, at) == '.')
        {
            int count = DigitText.CountDigits(DigitText.Load(ref text, at + 1), out ulong values);
            if (count == 0 || count > decimals)
            {
                return DigitText.No;
            }

            ticks += DigitText.Combine(values & ((1UL << (8 * count)) - 1)) / 10 * unit / TimeSpan.TicksPerSecond;
            at += 1 + count;
        }

        return IsInRange(ticks) ? at : DigitText.No;
    }

    // Where rows are in no order of time, the date at least is mostly the same.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private bool TryLearnSecond(ref byte text, nint at)
    {
        bool isSameDate = ((DigitText.Load(ref text, at) ^ _dateStart) | (DigitText.Load(ref text, at + DateLength - sizeof(ulong)) ^ _dateEnd)) == 0;
        if ((!isSameDate && !TryLearnDate(ref text, at)) || !DigitText.TryReadClock(DigitText.Load(ref text, at + DateLength), out uint seconds))
        {
            return false;
        }

        _secondStart = Vector128.LoadUnsafe(ref text, (nuint)at);
        _secondEnd = Vector128.LoadUnsafe(ref text, (nuint)(at + TimeLength - Vector128<byte>.Count));
        _secondTicks = _dateTicks + (seconds * TimeSpan.TicksPerSecond);
        return true;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private bool TryLearnDate(ref byte text, nint at)
    {
        ReadOnlySpan<byte> date = MemoryMarshal.CreateReadOnlySpan(ref Unsafe.Add(ref text, at), DateLength);
        if (date[^1] != 'T' || !TimeText.TryReadDate(date[..^1], out long ticks))
        {
            return false;
        }

        if (_calendar is not null)
        {
            if (!_calendar.TryGetSteadyOffset(ticks, out TimeSpan offset))
            {
                return false;
            }

            ticks -= offset.Ticks;
        }

        _dateStart = DigitText.Load(ref text, at);
        _dateEnd = DigitText.Load(ref text, at + DateLength - sizeof(ulong));
        _dateTicks = ticks;
        return true;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private bool TryLearnOffset(ref byte text, nint at)
    {
        long ticks = 0;
        ReadOnlySpan<byte> offset = MemoryMarshal.CreateReadOnlySpan(ref Unsafe.Add(ref text, at), OffsetLength);
        if (offset[0] is not ((byte)'+' or (byte)'-') || offset[3] != ':' || TimeText.ReadOffset(offset, ref ticks) is not null)
        {
            return false;
        }

        _offset = DigitText.Load(ref text, at) & OffsetMask;
        _offsetTicks = -ticks;
        return true;
    }
}
