using System;
using System.Runtime.CompilerServices;
using ToolLedger.Identifiers;
using ToolLedger.Reads;

namespace ToolLedger.Interchange;

/// <summary>Reads the commonest spelling of each field of a row straight into the place of the read. A field it does not know, and every bad one, ends the quick
/// way, and the careful one reads the row from its start.</summary>
internal sealed class QuickFields
{
    /// <summary>The most bytes that are looked at from the start of a field, or of what stands between two.</summary>
    internal const int Reach = 64;

    /// <summary>The same for a row of every column, each once.</summary>
    internal const int RowReach = 8 * Reach;

    private const uint EpcPrefix = 0x3A_63_70_65; // "epc:"
    private const int StrengthDigitsMax = 3;
    private const int CommonDigits = 24;

    private readonly bool _takesPrefix;
    private QuickTime _time;
    private long _firstTicks;
    private long _lastTicks;
    private ulong _tidHigh;
    private ulong _tidLow;
    private long _reportId;
    private int _tidBitCount;

    internal QuickFields(ReadFileOptions options)
    {
        _time = new QuickTime(options);
        _takesPrefix = options.TagForm == ReadTagForm.TagIdText;
        IsUsable = DigitText.IsSupported && options.TagForm != ReadTagForm.PlainText;
    }

    /// <summary>Whether rows of this form can be read the quick way at all.</summary>
    internal bool IsUsable { get; }

    /// <summary>Begins a row in the place of its read.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static void Begin(ref TagRead read) => TagRead.WriteRest(ref read, 0, 0, 0, ReadFields.None);

    /// <summary>Reads a field.</summary>
    /// <param name="column">Which; not one that is ignored.</param>
    /// <param name="text">Its bytes begin <paramref name="at"/> bytes behind this one; <see cref="Reach"/> of them may be read.</param>
    /// <param name="at">The place.</param>
    /// <param name="read">The place of the read.</param>
    /// <returns>The place behind the field, or <see cref="DigitText.No"/>.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal nint Read(ReadColumn column, ref byte text, nint at, ref TagRead read) => column switch
    {
        ReadColumn.Tag => ReadTag(ref text, at, ref read),
        ReadColumn.FirstSeen => _time.Read(ref text, at, out _firstTicks),
        ReadColumn.Antenna => ReadAntenna(ref text, at, ref read),
        ReadColumn.Rssi => ReadStrength(ref text, at, ref read),
        _ => ReadRare(column, ref text, at, ref read),
    };

    /// <summary>Ends a row of these columns: writes what was read, unless something that must be there is not, or the times are reversed.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal bool TryEnd(uint given, ref TagRead read)
    {
        const uint needed = (1u << (int)ReadColumn.Tag) | (1u << (int)ReadColumn.FirstSeen);
        long first = _firstTicks;
        long last = (given & (1u << (int)ReadColumn.LastSeen)) != 0 ? _lastTicks : first;
        if ((given & needed) != needed || last < first)
        {
            return false;
        }

        ReadFields fields = (given & (1u << (int)ReadColumn.Rssi)) != 0 ? ReadFields.Strength : ReadFields.None;
        fields |= (given & (1u << (int)ReadColumn.Count)) != 0 ? ReadFields.Count : ReadFields.None;
        TagRead.WriteTimes(ref read, first, last);
        TagRead.WriteFields(ref read, fields);
        if ((given & ((1u << (int)ReadColumn.Tid) | (1u << (int)ReadColumn.ReportId))) != 0)
        {
            AddRare(given, ref read);
        }

        return true;
    }

    // Four digits are a word, and a tag answers in whole words.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private nint ReadTag(ref byte text, nint at, ref TagRead read)
    {
        if (_takesPrefix && Unsafe.ReadUnaligned<uint>(ref Unsafe.Add(ref text, at)) == EpcPrefix)
        {
            at += sizeof(uint);
        }

        int count = DigitText.ReadHex(ref text, at, out ulong high, out ulong low);
        if (count == CommonDigits)
        {
            TagRead.WriteTag(ref read, high, low, 4 * CommonDigits);
            return at + CommonDigits;
        }

        return count > 0 && count % 4 == 0 ? WriteTag(ref read, high, low, count) + at : DigitText.No;
    }

    // Apart from the tags of 96 bits, because room for what it needs would be cleared for each of them.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static nint WriteTag(ref TagRead read, ulong high, ulong low, int count)
    {
        TagRead.WriteTag(ref read, high, low, 4 * count);
        return count;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static nint ReadAntenna(ref byte text, nint at, ref TagRead read)
    {
        uint number = (uint)(Unsafe.Add(ref text, at) - '0');
        if (number - 1 > 8)
        {
            return DigitText.No;
        }

        uint digit;
        while ((digit = (uint)(Unsafe.Add(ref text, ++at) - '0')) <= 9 && number <= byte.MaxValue)
        {
            number = (number * 10) + digit;
        }

        TagRead.WriteAntenna(ref read, (byte)number);
        return number <= byte.MaxValue ? at : DigitText.No;
    }

    // At most two decimals: more are rounded the careful way.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static nint ReadStrength(ref byte text, nint at, ref TagRead read)
    {
        int sign = Unsafe.Add(ref text, at) == '-' ? -1 : 1;
        nint start = sign < 0 ? ++at : at;
        if (DigitText.TryReadFourDigits(DigitText.Load(ref text, at), out int hundredths))
        {
            return WriteStrength(ref read, sign * hundredths) ? at + 5 : DigitText.No;
        }

        hundredths = 0;
        uint digit;
        while ((digit = (uint)(Unsafe.Add(ref text, at) - '0')) <= 9 && at - start < StrengthDigitsMax)
        {
            hundredths = (hundredths * 10) + (int)digit;
            at++;
        }

        if (at == start || (at - start > 1 && Unsafe.Add(ref text, start) == '0'))
        {
            return DigitText.No;
        }

        hundredths *= 100;
        if (Unsafe.Add(ref text, at) == '.')
        {
            uint tenth = (uint)(Unsafe.Add(ref text, at + 1) - '0');
            if (tenth > 9)
            {
                return DigitText.No;
            }

            hundredths += (int)tenth * 10;
            at += 2;
            uint hundredth = (uint)(Unsafe.Add(ref text, at) - '0');
            if (hundredth <= 9)
            {
                hundredths += (int)hundredth;
                at++;
            }
        }

        return WriteStrength(ref read, sign * hundredths) ? at : DigitText.No;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static bool WriteStrength(ref TagRead read, int hundredths)
    {
        TagRead.WriteStrength(ref read, (short)hundredths);
        return (short)hundredths == hundredths;
    }

    private nint ReadRare(ReadColumn column, ref byte text, nint at, ref TagRead read)
    {
        ulong number;
        switch (column)
        {
            case ReadColumn.LastSeen:
                return _time.Read(ref text, at, out _lastTicks);
            case ReadColumn.Count:
                at = DigitText.ReadNumber(ref text, at, out number);
                TagRead.WriteCount(ref read, (int)(uint)number);
                return number is >= 1 and <= int.MaxValue ? at : DigitText.No;
            case ReadColumn.ReportId:
                at = DigitText.ReadNumber(ref text, at, out number);
                _reportId = (long)number;
                return at;
            default:
                int count = DigitText.ReadHex(ref text, at, out _tidHigh, out _tidLow);
                _tidBitCount = 4 * count;
                return count > 0 ? at + count : DigitText.No;
        }
    }

    // Apart from the row, because room for a copy of the read would be cleared for each.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private void AddRare(uint given, ref TagRead read)
    {
        if ((given & (1u << (int)ReadColumn.Tid)) != 0)
        {
            Span<byte> bytes = stackalloc byte[2 * sizeof(ulong)];
            System.Buffers.Binary.BinaryPrimitives.WriteUInt64BigEndian(bytes, _tidHigh);
            System.Buffers.Binary.BinaryPrimitives.WriteUInt64BigEndian(bytes[sizeof(ulong)..], _tidLow);
            read = read with { Tid = Tid.FromBytes(bytes, _tidBitCount) };
        }

        if ((given & (1u << (int)ReadColumn.ReportId)) != 0)
        {
            read = read with { ReportId = _reportId };
        }
    }
}
