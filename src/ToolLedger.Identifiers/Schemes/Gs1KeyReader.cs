using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>Takes the value of a GS1 key apart.</summary>
internal readonly ref struct Gs1KeyReader
{
    private readonly KindGrammar _grammar;
    private readonly Gs1Key _key;
    private readonly CompanyPrefixLength _length;
    private readonly EpcDecoding _decoding;

    internal Gs1KeyReader(KindGrammar grammar, CompanyPrefixLength length, EpcDecoding decoding)
    {
        _grammar = grammar;
        _key = grammar.Gs1!;
        _length = length;
        _decoding = decoding;
    }

    internal bool TryRead(ReadOnlySpan<byte> value, int position, ref IdentityBits bits, ref EpcFault fault)
    {
        bits.Kind = _grammar.Kind;
        return _key.Shape == Gs1Shape.Text
            ? TryReadText(value, position, ref bits, ref fault)
            : TryReadDigits(value, position, ref bits, ref fault);
    }

    private static bool Fail(EpcRule rule, EpcField field, int position, ulong found, ref EpcFault fault)
    {
        fault = new EpcFault(rule, field, EpcPositionUnit.Character, position, found);
        return false;
    }

    private bool TryReadText(ReadOnlySpan<byte> value, int position, ref IdentityBits bits, ref EpcFault fault)
    {
        if (value.Length > _key.Digits)
        {
            return Fail(EpcRule.MaximumLength, EpcField.Value, position, (ulong)value.Length, ref fault);
        }

        if (!TryTakePrefix(value, position, ref bits, ref fault))
        {
            return false;
        }

        bits.B = EpcComponent.FromAscii(value.Slice(bits.A.Length));
        return KindGrammar.Accepts(_grammar.Components[1], bits.B, bits.A.Length, position + bits.A.Length, ref fault);
    }

    private bool TryReadDigits(ReadOnlySpan<byte> value, int position, ref IdentityBits bits, ref EpcFault fault)
    {
        int count = _key.FixedLength;
        if (value.Length < count || (!_key.SerialInKey && value.Length > count))
        {
            return Fail(EpcRule.DigitCount, EpcField.Value, position, (ulong)value.Length, ref fault);
        }

        for (int i = 0; i < count; i++)
        {
            if (value[i] is < (byte)'0' or > (byte)'9')
            {
                return Fail(EpcRule.DecimalDigits, EpcField.Value, position + i, value[i], ref fault);
            }
        }

        int body = _key.Shape == Gs1Shape.Digits ? 0 : 1;
        int check = body + _key.Digits - (_key.Shape == Gs1Shape.FirstDigitInFront ? 1 : 0);
        if (_key.Shape == Gs1Shape.ZeroInFront && value[0] != '0')
        {
            return Fail(EpcRule.FillerZero, EpcField.Value, position, value[0], ref fault);
        }

        if (Gs1Text.CheckDigit(value.Slice(0, check)) != value[check])
        {
            return Fail(EpcRule.CheckDigit, EpcField.CheckDigit, position + check, value[check], ref fault);
        }

        return IsAllowed(value, position, ref fault)
            && TryTakePrefix(value.Slice(body, check - body), position, ref bits, ref fault)
            && TryTakeReference(value, body, check, position, ref bits, ref fault)
            && TryTakePieces(value, check + 1, position, ref bits, ref fault)
            && TryTakeSerial(value, count, position, ref bits, ref fault);
    }

    private bool TryTakePrefix(ReadOnlySpan<byte> digits, int position, ref IdentityBits bits, ref EpcFault fault)
    {
        int length = _length.For(digits);
        if (length == 0)
        {
            return Fail(EpcRule.CompanyPrefixLengthGiven, EpcField.CompanyPrefix, position, 0, ref fault);
        }

        if (length is < 6 or > 12 || length > digits.Length)
        {
            return Fail(EpcRule.CompanyPrefixLength, EpcField.CompanyPrefix, position, (ulong)Math.Max(0, length), ref fault);
        }

        bits.A = EpcComponent.FromAscii(digits.Slice(0, length));
        return KindGrammar.Accepts(_grammar.Components[0], bits.A, length, position, ref fault);
    }

    private bool TryTakeReference(
        ReadOnlySpan<byte> value, int body, int check, int position, ref IdentityBits bits, ref EpcFault fault)
    {
        ReadOnlySpan<byte> rest = value.Slice(body + bits.A.Length, check - body - bits.A.Length);
        if (_key.Shape == Gs1Shape.FirstDigitInFront)
        {
            Span<byte> moved = stackalloc byte[EpcComponent.MaxLength];
            moved[0] = value[0];
            rest.CopyTo(moved.Slice(1));
            bits.B = EpcComponent.FromAscii(moved.Slice(0, rest.Length + 1));
        }
        else
        {
            bits.B = EpcComponent.FromAscii(rest);
        }

        return KindGrammar.Accepts(_grammar.Components[1], bits.B, bits.A.Length, position, ref fault);
    }

    private bool TryTakePieces(ReadOnlySpan<byte> value, int from, int position, ref IdentityBits bits, ref EpcFault fault)
    {
        if (!_key.HasPieces)
        {
            return true;
        }

        bits.Piece = (byte)((10 * (value[from] - '0')) + value[from + 1] - '0');
        bits.Total = (byte)((10 * (value[from + 2] - '0')) + value[from + 3] - '0');
        bool zero = _decoding == EpcDecoding.Strict && bits.Piece == 0;
        return bits.Piece <= bits.Total && !zero
            ? true
            : Fail(EpcRule.PieceOfTotal, EpcField.Piece, position + from, bits.Piece, ref fault);
    }

    private bool TryTakeSerial(ReadOnlySpan<byte> value, int from, int position, ref IdentityBits bits, ref EpcFault fault)
    {
        if (!_key.SerialInKey)
        {
            return true;
        }

        ComponentRule rule = _grammar.Components[2];
        ReadOnlySpan<byte> serial = value.Slice(from);
        if (serial.Length == 0)
        {
            return Fail(EpcRule.SerialGiven, EpcField.Serial, position + from, 0, ref fault);
        }

        if (serial.Length > rule.Maximum)
        {
            return Fail(EpcRule.MaximumLength, EpcField.Serial, position + from, (ulong)serial.Length, ref fault);
        }

        bits.C = EpcComponent.FromAscii(serial);
        return KindGrammar.Accepts(rule, bits.C, bits.A.Length, position + from, ref fault);
    }

    // GS1 TDS 2.3, s.7.3.3 to 7.3.8: numbers for restricted circulation, coupons, refund receipts and serial publications.
    private bool IsAllowed(ReadOnlySpan<byte> value, int position, ref EpcFault fault)
    {
        if (_decoding == EpcDecoding.Lenient || _key.Shape != Gs1Shape.FirstDigitInFront || _key.Digits != 13)
        {
            return true;
        }

        DecimalText.TryRead(value.Slice(1, 12), out ulong body);
        int two = (int)(body / 10_000_000_000);
        int three = (int)(body / 1_000_000_000);
        int four = (int)(body / 100_000_000);
        bool eight = body < 10_000_000 && value[0] == '0';
        bool restricted = eight
            ? body / 1_000_000 is 0 or 2
            : two is 2 or 4 or (>= 20 and <= 29) or 99 || three is 977 or (>= 980 and <= 984) || four is >= 1 and <= 7;
        return !restricted || Fail(EpcRule.KeyAllowed, EpcField.Value, position, body, ref fault);
    }
}
