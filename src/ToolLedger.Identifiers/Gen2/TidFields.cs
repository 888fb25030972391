using System;
using System.Globalization;

namespace ToolLedger.Identifiers.Gen2;

/// <summary>
/// The decoded fields of a TID memory (GS1 TDS 2.3, chapter 16): who designed the chip, which model it is, and its serial number
/// where it has one. They identify the tag, not the item.
/// </summary>
/// <remarks>The default value has class <see cref="TidClass.Unknown"/>. Immutable, and therefore safe for use by any number of
/// threads.</remarks>
public readonly record struct TidFields
{
    private readonly ushort _designer;

    private TidFields(TidClass tidClass, ushort designer, int model, ushort xtid, Epc serial)
    {
        Class = tidClass;
        _designer = designer;
        Model = model;
        XtidHeader = xtid;
        Serial = serial;
    }

    /// <summary>The class.</summary>
    public TidClass Class { get; }

    /// <summary>Bit 08h of class E2: an extended TID follows.</summary>
    public bool HasXtid => Class == TidClass.Gs1 && (_designer & 0x800) != 0;

    /// <summary>Bit 09h of class E2: the tag supports security commands.</summary>
    public bool SupportsSecurity => Class == TidClass.Gs1 && (_designer & 0x400) != 0;

    /// <summary>Bit 0Ah of class E2: the tag supports the file command.</summary>
    public bool SupportsFiles => Class == TidClass.Gs1 && (_designer & 0x200) != 0;

    /// <summary>The mask designer: 9 bits of class E2; the maker's code of 8 bits of class E0.</summary>
    public int MaskDesigner => Class == TidClass.Gs1 ? _designer & 0x1FF : _designer;

    /// <summary>The tag model number of class E2: 0 to 4,095; 0 for class E0.</summary>
    public int Model { get; }

    /// <summary>The header of the extended TID; 0 when there is none.</summary>
    public ushort XtidHeader { get; }

    /// <summary>Whether the extended TID has the optional command support segment (bit 12 of its header).</summary>
    public bool HasOptionalCommandSegment => (XtidHeader & 0x1000) != 0;

    /// <summary>Whether the extended TID has the block write and block erase segment (bit 11 of its header).</summary>
    public bool HasBlockWriteSegment => (XtidHeader & 0x0800) != 0;

    /// <summary>Whether the extended TID has the user memory and block permalock segment (bit 10 of its header).</summary>
    public bool HasUserMemorySegment => (XtidHeader & 0x0400) != 0;

    /// <summary>Whether the extended TID has the lock bit segment (bit 9 of its header).</summary>
    public bool HasLockSegment => (XtidHeader & 0x0200) != 0;

    /// <summary>The serial number of the chip: 48 to 144 bits; empty when there is none.</summary>
    public Epc Serial { get; }

    /// <summary>Decodes a TID, without an exception.</summary>
    /// <param name="tid">The TID.</param>
    /// <param name="fields">The fields, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken and at which bit, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the class is known and the bits that its fields need are there.</returns>
    public static bool TryDecode(Tid tid, out TidFields fields, out EpcFault fault)
    {
        fields = default;
        fault = default;
        Span<byte> bytes = stackalloc byte[Tid.MaxBitCount / 8];
        tid.TryWriteBytes(bytes, out _);
        switch (bytes[0])
        {
            case 0xE2 when tid.BitCount >= 8:
                return TryDecodeGs1(bytes, tid.BitCount, out fields, ref fault);
            case 0xE0 when tid.BitCount >= 64:
                fields = new TidFields(TidClass.Iso7816, bytes[1], 0, 0, Epc.FromTrustedBytes(bytes.Slice(2, 6), 48));
                return true;
            case 0xE0:
                return Fail(EpcRule.EnoughBits, EpcField.Serial, tid.BitCount, (ulong)tid.BitCount, ref fault);
            default:
                return Fail(EpcRule.HeaderAssigned, EpcField.Header, 0, bytes[0], ref fault);
        }
    }

    /// <summary>The serialised TID URI <c>urn:epc:stid:xAAA.xBBB.xSSSS</c> (GS1 TDS 2.3, s.16.3): designer with its three
    /// indicator bits, model, serial number.</summary>
    /// <param name="uri">The URI, or empty text when the answer is <see langword="false"/>.</param>
    /// <returns>Whether there is one: class E2 with an extended TID and a serial number.</returns>
    public bool TryGetStidUri(out string uri)
    {
        bool exists = HasXtid && !Serial.IsEmpty;
        uri = exists
            ? string.Format(CultureInfo.InvariantCulture, "urn:epc:stid:x{0:X3}.x{1:X3}.x{2}", _designer, Model, Serial.ToString())
            : string.Empty;
        return exists;
    }

    /// <summary>Reads a serialised TID URI. The header of the extended TID is not part of it and comes back as the size of the
    /// serial number only.</summary>
    /// <param name="uri">The URI.</param>
    /// <param name="fields">The fields, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken and where, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the URI is valid.</returns>
    public static bool TryParseStidUri(ReadOnlySpan<char> uri, out TidFields fields, out EpcFault fault)
    {
        const string Start = "urn:epc:stid:x";
        const int Digits = 14;
        fields = default;
        fault = default;
        if (!uri.StartsWith(Start.AsSpan(), StringComparison.Ordinal))
        {
            fault = new EpcFault(EpcRule.UriPrefix, EpcField.Scheme, EpcPositionUnit.Character, 0, (ulong)uri.Length);
            return false;
        }

        // xAAA.xBBB.xSSSS: three digits, three digits, then 12, 16 .. 36 digits.
        int serialDigits = uri.Length - Digits - 10;
        bool shape = serialDigits is >= 12 and <= 36 && serialDigits % 4 == 0
            && uri.Slice(Digits + 3, 2).SequenceEqual(".x".AsSpan()) && uri.Slice(Digits + 8, 2).SequenceEqual(".x".AsSpan());
        if (!shape)
        {
            fault = new EpcFault(EpcRule.ComponentCount, EpcField.Scheme, EpcPositionUnit.Character, Digits, (ulong)uri.Length);
            return false;
        }

        bool hex = HexText.TryReadWord(uri.Slice(Digits, 3), out ulong designer)
            & HexText.TryReadWord(uri.Slice(Digits + 5, 3), out ulong model)
            & Epc.TryParse(uri.Slice(Digits + 10), out Epc serial);
        if (!hex || designer >> 63 == 0)
        {
            EpcRule rule = hex ? EpcRule.FitsBits : EpcRule.HexDigits;
            fault = new EpcFault(rule, EpcField.Value, EpcPositionUnit.Character, Digits, designer >> 52);
            return false;
        }

        int size = ((serial.BitCount - 48) / 16) + 1;
        fields = new TidFields(TidClass.Gs1, (ushort)(designer >> 52), (int)(model >> 52), (ushort)(size << 13), serial);
        return true;
    }

    private static bool TryDecodeGs1(ReadOnlySpan<byte> bytes, int bitCount, out TidFields fields, ref EpcFault fault)
    {
        fields = default;
        if (bitCount < 32)
        {
            return Fail(EpcRule.EnoughBits, EpcField.Header, bitCount, (ulong)bitCount, ref fault);
        }

        ushort designer = (ushort)((bytes[1] << 4) | (bytes[2] >> 4));
        int model = ((bytes[2] & 15) << 8) | bytes[3];
        ushort xtid = 0;
        Epc serial = default;
        if ((designer & 0x800) != 0)
        {
            if (bitCount < 48)
            {
                return Fail(EpcRule.EnoughBits, EpcField.Control, bitCount, (ulong)bitCount, ref fault);
            }

            xtid = (ushort)((bytes[4] << 8) | bytes[5]);

            // Bits 15 to 13 of the header: 0 for no serial number, otherwise 48 bits and 16 more for each step.
            int size = xtid >> 13;
            int width = size == 0 ? 0 : 48 + (16 * (size - 1));
            if (bitCount < 48 + width)
            {
                return Fail(EpcRule.EnoughBits, EpcField.Serial, bitCount, (ulong)bitCount, ref fault);
            }

            serial = Epc.FromTrustedBytes(bytes.Slice(6), width);
        }

        fields = new TidFields(TidClass.Gs1, designer, model, xtid, serial);
        return true;
    }

    private static bool Fail(EpcRule rule, EpcField field, int position, ulong found, ref EpcFault fault)
    {
        fault = new EpcFault(rule, field, EpcPositionUnit.Bit, position, found);
        return false;
    }
}
