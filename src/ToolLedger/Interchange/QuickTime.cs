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
    private const int MinuteLength = 16;
    private const int TimeLength = 19;
    private const int OffsetLength = 6;
    private const int TickDigits = 7;
    private const ulong OffsetMask = 0x0000_FFFF_FFFF_FFFF;

    private readonly ReadTimeForm _form;
    private readonly SiteCalendar? _calendar;

    // Date, hour and minute of the row before: nearly always those of this row.
    private Vector128<byte> _minute;
    private long _minuteTicks;

    // The date of the row before up to the T, in two overlapping words, and the offset.
    private ulong _dateStart;
    private ulong _dateEnd;
    private ulong _offset;
    private long _dateTicks;
    private long _offsetTicks;

    internal QuickTime(ReadFileOptions options)
    {
        _form = options.TimeForm;
        _calendar = options.Calendar;

        // No bytes of text.
        _offset = ulong.MaxValue;
        _minute = Vector128<byte>.AllBitsSet;
    }

    /// <summary>Reads an instant.</summary>
    /// <returns>The place behind it, or <see cref="DigitText.No"/>.</returns>
    /// <remarks>Not inlined, like the other fields of some length: together they would need more registers than there are.</remarks>
    [MethodImpl(MethodImplOptions.NoInlining)]
    internal nint Read(ref byte text, nint at, out long ticks)
    {
        nint end = _form is ReadTimeForm.Iso8601WithOffset or ReadTimeForm.Iso8601Local ? ReadIso(ref text, at, out long found) : ReadEpoch(ref text, at, out found);
        ticks = found;
        return (ulong)(found - TimeText.FirstTicks) < (ulong)(TimeText.EndTicks - TimeText.FirstTicks) ? end : DigitText.No;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private nint ReadIso(ref byte text, nint at, out long ticks)
    {
        ticks = 0;
        Vector128<byte> minute = Vector128.LoadUnsafe(ref text, (nuint)at);
        if (minute != _minute && !TryLearnMinute(ref text, at, minute))
        {
            return DigitText.No;
        }

        // ":ss"
        uint tens = (uint)(Unsafe.Add(ref text, at + MinuteLength + 1) - '0');
        uint ones = (uint)(Unsafe.Add(ref text, at + MinuteLength + 2) - '0');
        if (Unsafe.Add(ref text, at + MinuteLength) != ':' || tens > 5 || ones > 9)
        {
            return DigitText.No;
        }

        ticks = _minuteTicks + (((tens * 10) + ones) * TimeSpan.TicksPerSecond);
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
        if (_form == ReadTimeForm.Iso8601Local)
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

        return at;
    }

    // Apart from the row, because it is rare; and where rows are in no order of time, the date at least is mostly the same.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private bool TryLearnMinute(ref byte text, nint at, Vector128<byte> minute)
    {
        bool isSameDate = ((DigitText.Load(ref text, at) ^ _dateStart) | (DigitText.Load(ref text, at + DateLength - sizeof(ulong)) ^ _dateEnd)) == 0;
        if ((!isSameDate && !TryLearnDate(ref text, at)) || !DigitText.TryReadClock(DigitText.Load(ref text, at + DateLength), out uint seconds))
        {
            return false;
        }

        _minute = minute;
        _minuteTicks = _dateTicks + (seconds / 60 * TimeSpan.TicksPerMinute);
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

        if (_form == ReadTimeForm.Iso8601Local)
        {
            if (_calendar is null || !_calendar.TryGetSteadyOffset(ticks, out TimeSpan offset))
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
