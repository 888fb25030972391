using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>GS1 elements to identities and back (GS1 TDS 2.3, chapter 7).</summary>
internal static class Gs1Text
{
    /// <summary>Takes the identity out of elements that were read.</summary>
    internal static bool TryResolve(
        ref ElementReader elements, CompanyPrefixLength length, EpcDecoding decoding, ref IdentityBits bits, ref EpcFault fault)
    {
        for (int i = 0; i < elements.Count; i++)
        {
            KindGrammar? grammar = GrammarFor(ref elements, elements[i].Ai, out bool known);
            if (grammar is not null)
            {
                var key = new Gs1KeyReader(grammar, length, decoding);
                return key.TryRead(elements.Value(elements[i]), elements[i].ValuePosition, ref bits, ref fault)
                    && TryReadQualifier(ref elements, grammar, ref bits, ref fault);
            }

            if (known)
            {
                return Fail(EpcRule.SerialGiven, EpcField.Serial, elements[i].Position, (ulong)(elements[i].Ai % 10_000), ref fault);
            }
        }

        return Fail(EpcRule.KeyPresent, EpcField.ApplicationIdentifier, 0, (ulong)elements.Count, ref fault);
    }

    /// <summary>Writes the value of the key.</summary>
    internal static void WriteKey(Gs1Key key, in IdentityBits bits, ref TextSink sink)
    {
        int start = sink.Length;
        if (key.Shape == Gs1Shape.FirstDigitInFront)
        {
            sink.Add(bits.B.CharacterAt(0));
        }
        else if (key.Shape == Gs1Shape.ZeroInFront)
        {
            sink.Add((byte)'0');
        }

        sink.AddPlain(bits.A);
        if (key.Shape == Gs1Shape.FirstDigitInFront)
        {
            int rest = bits.B.Length - 1;
            sink.AddDigits(bits.B.Number % DecimalText.PowerOfTen(rest), rest);
        }
        else
        {
            sink.AddPlain(bits.B);
        }

        if (key.Shape != Gs1Shape.Text)
        {
            sink.Add(CheckDigit(sink.From(start)));
        }

        if (key.HasPieces)
        {
            sink.AddDigits(bits.Piece, 2);
            sink.AddDigits(bits.Total, 2);
        }

        if (key.SerialInKey)
        {
            sink.AddPlain(bits.C);
        }
    }

    /// <summary>Whether a second element holds the serial number.</summary>
    internal static bool HasQualifier(Gs1Key key, in IdentityBits bits) =>
        key.QualifierAi != 0 && !(key.ZeroMeansNone && bits.C == new EpcComponent(0, 1));

    /// <summary>Weights 3, 1, 3, 1 ... from the right (GS1 General Specifications, s.7.9).</summary>
    internal static byte CheckDigit(ReadOnlySpan<byte> digits)
    {
        int sum = 0;
        for (int i = 0; i < digits.Length; i++)
        {
            sum += (digits[digits.Length - 1 - i] - '0') * ((i & 1) == 0 ? 3 : 1);
        }

        return (byte)('0' + ((10 - (sum % 10)) % 10));
    }

    private static KindGrammar? GrammarFor(ref ElementReader elements, int ai, out bool known)
    {
        known = false;
        foreach (KindGrammar grammar in KindList.Grammars)
        {
            Gs1Key? key = grammar.Gs1;
            if (key is null || key.Ai != ai)
            {
                continue;
            }

            known = true;
            if (key.QualifierAi == 0 || key.ZeroMeansNone || IndexOf(ref elements, key.QualifierAi) >= 0)
            {
                return grammar;
            }
        }

        return null;
    }

    private static int IndexOf(ref ElementReader elements, int ai)
    {
        for (int i = 0; i < elements.Count; i++)
        {
            if (elements[i].Ai == ai)
            {
                return i;
            }
        }

        return -1;
    }

    private static bool TryReadQualifier(
        ref ElementReader elements, KindGrammar grammar, ref IdentityBits bits, ref EpcFault fault)
    {
        Gs1Key key = grammar.Gs1!;
        if (key.QualifierAi == 0)
        {
            return true;
        }

        int index = IndexOf(ref elements, key.QualifierAi);
        if (index < 0)
        {
            bits.C = new EpcComponent(0, 1);
            return true;
        }

        ReadOnlySpan<byte> value = elements.Value(elements[index]);
        ComponentRule rule = grammar.Components[grammar.Components.Length - 1];
        int position = elements[index].ValuePosition;
        if (value.Length > EpcComponent.MaxLength)
        {
            return KindGrammar.Fail(rule, EpcRule.MaximumLength, position, 0, (ulong)value.Length, ref fault);
        }

        bits.C = EpcComponent.FromAscii(value);
        return KindGrammar.Accepts(rule, bits.C, bits.A.Length, position, ref fault);
    }

    private static bool Fail(EpcRule rule, EpcField field, int position, ulong found, ref EpcFault fault)
    {
        fault = new EpcFault(rule, field, EpcPositionUnit.Character, position, found);
        return false;
    }
}
