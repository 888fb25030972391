using System;
using System.Buffers.Binary;
using System.Runtime.CompilerServices;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>The dotted components of EPC URIs, in and out.</summary>
internal static class UriComponents
{
    internal static void Write(KindGrammar grammar, in IdentityBits bits, ref TextSink sink)
    {
        ComponentRule[] rules = grammar.Components;
        for (int i = 0; i < rules.Length; i++)
        {
            if (i > 0)
            {
                sink.Add((byte)'.');
            }

            switch (rules[i].Slot)
            {
                case ComponentSlot.A: sink.AddEscaped(bits.A); break;
                case ComponentSlot.B: sink.AddEscaped(bits.B); break;
                case ComponentSlot.C: sink.AddEscaped(bits.C); break;
                case ComponentSlot.Piece: sink.AddDigits(bits.Piece, 2); break;
                default: sink.AddDigits(bits.Total, 2); break;
            }
        }
    }

    /// <summary>Reads all components from the position to the end of the text.</summary>
    internal static bool TryRead(
        KindGrammar grammar, ReadOnlySpan<byte> text, int position, ref IdentityBits bits, ref EpcFault fault)
    {
        ComponentRule[] rules = grammar.Components;
        bits.Kind = grammar.Kind;
        for (int i = 0; i < rules.Length; i++)
        {
            ComponentRule rule = rules[i];
            bool last = i == rules.Length - 1;
            int start = position;
            ulong number = ReadDigits(text, ref position);
            int length = position - start;
            bool ended = position == text.Length || (!last && text[position] == '.');

            // Most components are short runs of digits that their rule takes at once; everything else is read with care.
            if (ended && rule.TakesDigits(number, length, bits.A.Length))
            {
                bits.SetDigits(rule.Slot, number, length);
            }
            else
            {
                var component = new EpcComponent(number, length);
                if (!ended)
                {
                    position = start;
                    if (!TryReadText(rule, last, text, ref position, out component, ref fault))
                    {
                        return false;
                    }
                }

                if (!KindGrammar.Accepts(rule, component, bits.A.Length, start, ref fault))
                {
                    return false;
                }

                bits.Set(rule.Slot, component);
            }

            if (last)
            {
                return true;
            }

            if (position >= text.Length)
            {
                return KindGrammar.Fail(rules[i + 1], EpcRule.ComponentCount, position, 0, (ulong)(i + 1), ref fault);
            }

            position++; // the dot
        }

        return true;
    }

    /// <summary>Reads one component that reaches to the end of the text.</summary>
    internal static bool TryReadOne(
        ComponentRule rule, ReadOnlySpan<byte> text, ref int position, out EpcComponent component, ref EpcFault fault) =>
        TryReadComponent(rule, true, text, ref position, out component, ref fault);

    /// <summary>Where the component of a field begins in a text that was read.</summary>
    internal static int PositionOf(KindGrammar grammar, EpcField field, ReadOnlySpan<byte> text, int position)
    {
        foreach (ComponentRule rule in grammar.Components)
        {
            if (rule.Field == field)
            {
                return position;
            }

            int dot = text.Slice(position).IndexOf((byte)'.');
            position = dot < 0 ? position : position + dot + 1;
        }

        return position;
    }

    private static bool TryReadComponent(
        ComponentRule rule, bool last, ReadOnlySpan<byte> text, ref int position, out EpcComponent component, ref EpcFault fault)
    {
        // Most components are short runs of digits: read those first, and everything else with care.
        int at = position;
        ulong number = ReadDigits(text, ref at);
        if (at == text.Length || (!last && text[at] == '.'))
        {
            component = new EpcComponent(number, at - position);
            position = at;
            return true;
        }

        return TryReadText(rule, last, text, ref position, out component, ref fault);
    }

    // Up to 19 digits, eight at a time; the position ends behind the last one.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ulong ReadDigits(ReadOnlySpan<byte> text, ref int position)
    {
        ulong number = 0;
        int start = position;
        while (position - start < 16 && text.Length >= 8)
        {
            // Near the end the last eight characters are read, and those in front of the position pushed out.
            int over = Math.Max(0, position + 8 - text.Length);
            if (over == 8)
            {
                return number;
            }

            ulong characters = BinaryPrimitives.ReadUInt64LittleEndian(text.Slice(position - over)) >> (8 * over);
            int count = DecimalText.LeadingDigits(characters);
            if (count == 0)
            {
                return number;
            }

            number = (number * DecimalText.PowerOfTen(count)) + DecimalText.ValueOf(characters, count);
            position += count;
            if (count < 8)
            {
                return number;
            }
        }

        while (position < text.Length && position - start < EpcComponent.MaxDigits && (uint)text[position] - '0' <= 9)
        {
            number = (number * 10) + text[position++] - '0';
        }

        return number;
    }

    private static bool TryReadText(
        ComponentRule rule, bool last, ReadOnlySpan<byte> text, ref int position, out EpcComponent component, ref EpcFault fault)
    {
        Span<ulong> words = stackalloc ulong[4];
        int count = 0;
        component = default;
        int start = position;
        bool wordwise = IsText(rule.Form) || rule.Form == ComponentForm.Cage;
        bool dots = last && rule.Form == ComponentForm.Characters82;
        while (position < text.Length && (last || text[position] != '.'))
        {
            if (wordwise && (count & 7) == 0 && count < EpcComponent.MaxLength && TryReadWord(dots, text, position, out ulong word, out int length))
            {
                words[count >> 3] = word;
                count += length;
                position += length;
                continue;
            }

            int here = position;
            if (!TryReadCharacter(rule, text, ref position, out uint character, ref fault))
            {
                return false;
            }

            if (count == EpcComponent.MaxLength)
            {
                return KindGrammar.Fail(rule, EpcRule.MaximumLength, start, 0, (ulong)(text.Length - start), ref fault);
            }

            if (last && character == '.' && !KindGrammar.InSet(rule.Form, character))
            {
                return KindGrammar.Fail(rule, EpcRule.ComponentCount, here, 0, character, ref fault);
            }

            words[count >> 3] |= (ulong)character << (56 - (8 * (count & 7)));
            count++;
        }

        component = EpcComponent.FromWords(words[0], words[1], words[2], words[3], count);
        return true;
    }

    // Up to eight characters of Table A-1 that need no second look: no escapes, no dot that ends the component.
    private static bool TryReadWord(bool dotsToo, ReadOnlySpan<byte> text, int position, out ulong word, out int length)
    {
        length = Math.Min(8, text.Length - position);
        int over = 8 - length;
        word = 0;
        if (position < over)
        {
            return false;
        }

        word = BinaryPrimitives.ReadUInt64BigEndian(text.Slice(position - over)) << (8 * over);
        if ((word & CharacterSets.Tops) != 0 || CharacterSets.Escaped(word) != 0)
        {
            return false;
        }

        if (!dotsToo)
        {
            ulong dots = CharacterSets.Dots(word);
            int dot = dots == 0 ? 8 : Bits.LeadingZeros(dots) >> 3;
            if (dot < length)
            {
                length = dot;
                word = dot == 0 ? 0 : word & (ulong.MaxValue << (64 - (8 * dot)));
            }
        }

        return length > 0 && CharacterSets.Outside82(word) >> (64 - (8 * length)) == 0;
    }

    private static bool TryReadCharacter(
        ComponentRule rule, ReadOnlySpan<byte> text, ref int position, out uint character, ref EpcFault fault)
    {
        character = text[position];
        if (character == '%' && IsText(rule.Form))
        {
            uint high = position + 2 < text.Length ? HexText.Nibble(text[position + 1]) : 0xFF;
            uint low = position + 2 < text.Length ? HexText.Nibble(text[position + 2]) : 0xFF;
            if ((high | low) > 15)
            {
                return KindGrammar.Fail(rule, EpcRule.EscapeForm, position, 0, character, ref fault);
            }

            character = (high << 4) | low;
            if (!CharacterSets.Is82(character) && character != '#')
            {
                return KindGrammar.Fail(rule, EpcRule.CharacterSet, position, 0, character, ref fault);
            }

            position += 3;
            return true;
        }

        if (CharacterSets.IsEscaped(character) && KindGrammar.InSet(rule.Form, character))
        {
            return KindGrammar.Fail(rule, EpcRule.EscapeNeeded, position, 0, character, ref fault);
        }

        if (character == '%' || !CharacterSets.Is82(character))
        {
            return KindGrammar.Fail(rule, RuleOfForm(rule.Form), position, 0, character, ref fault);
        }

        position++;
        return true;
    }

    private static bool IsText(ComponentForm form) => form
        is ComponentForm.Characters82 or ComponentForm.Characters39 or ComponentForm.PartNumber or ComponentForm.MarkedSerial;

    private static EpcRule RuleOfForm(ComponentForm form) =>
        IsText(form) || form is ComponentForm.ContainerNumber ? EpcRule.CharacterSet
        : form is ComponentForm.Cage ? EpcRule.CageCode
        : EpcRule.DecimalDigits;
}
