using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>
/// Splits GS1 text into elements: element strings with brackets or as a scanner transmits them, and the path of a Digital Link.
/// Values are copied without escapes into bytes that the caller gives.
/// </summary>
internal ref struct ElementReader
{
    internal const int Room = 2048;

    private const byte GroupSeparator = 0x1D;

    private readonly Span<ElementSlot> _slots;
    private readonly Span<byte> _plain;
    private int _length;

    internal ElementReader(Span<ElementSlot> slots, Span<byte> plain)
    {
        _slots = slots;
        _plain = plain;
        _length = 0;
        Count = 0;
    }

    internal int Count { get; private set; }

    internal readonly ref readonly ElementSlot this[int index] => ref _slots[index];

    internal readonly ReadOnlySpan<byte> Value(in ElementSlot slot) => _plain.Slice(slot.Start, slot.Length);

    internal bool TryReadElementString(ReadOnlySpan<byte> text, ref EpcFault fault)
    {
        if (text.Length == 0)
        {
            return Fail(EpcRule.NotEmpty, EpcField.Value, 0, 0, ref fault);
        }

        return text[0] == '(' ? TryReadBracketed(text, ref fault) : TryReadRaw(text, ref fault);
    }

    /// <summary>Begins an element; its characters follow one by one.</summary>
    internal bool TryBegin(int ai, int position, ref EpcFault fault)
    {
        for (int i = 0; i < Count; i++)
        {
            if (_slots[i].Ai == ai)
            {
                return Fail(EpcRule.NoRepetition, EpcField.ApplicationIdentifier, position, (ulong)(ai % 10_000), ref fault);
            }
        }

        if (Count == _slots.Length)
        {
            return Fail(EpcRule.TextLength, EpcField.ApplicationIdentifier, position, (ulong)Count, ref fault);
        }

        _slots[Count].Ai = ai;
        _slots[Count].Start = _length;
        _slots[Count].Length = 0;
        _slots[Count].Position = position;
        Count++;
        return true;
    }

    /// <summary>Adds a character to the element begun last.</summary>
    internal bool TryAdd(uint character, int position, ref EpcFault fault)
    {
        ref ElementSlot slot = ref _slots[Count - 1];
        if (!CharacterSets.Is82(character) && character != '#')
        {
            return Fail(EpcRule.CharacterSet, EpcField.Value, position, character, ref fault);
        }

        if (slot.Length == Ai.MaximumValue)
        {
            return Fail(EpcRule.MaximumLength, EpcField.Value, position, Ai.MaximumValue + 1, ref fault);
        }

        if (_length == _plain.Length)
        {
            return Fail(EpcRule.TextLength, EpcField.Value, position, (ulong)_length, ref fault);
        }

        slot.ValuePosition = slot.Length == 0 ? position : slot.ValuePosition;
        _plain[_length++] = (byte)character;
        slot.Length++;
        return true;
    }

    /// <summary>Adds a whole element.</summary>
    internal bool TryAddElement(string? identifier, string? value, ref EpcFault fault)
    {
        Span<byte> name = stackalloc byte[4];
        int at = _length;
        int ai = AsciiText.TryNarrow((identifier ?? string.Empty).AsSpan(), name, out ReadOnlySpan<byte> bytes, out _)
            ? Ai.Read(bytes)
            : 0;
        if (ai == 0 || Ai.DigitsOf(ai) != bytes.Length)
        {
            return Fail(EpcRule.ApplicationIdentifierKnown, EpcField.ApplicationIdentifier, at, (ulong)bytes.Length, ref fault);
        }

        if (!TryBegin(ai, at, ref fault))
        {
            return false;
        }

        foreach (char character in value ?? string.Empty)
        {
            if (!TryAdd(character, _length, ref fault))
            {
                return false;
            }
        }

        return TryEnd(at, ref fault);
    }

    /// <summary>Ends the element begun last.</summary>
    internal readonly bool TryEnd(int position, ref EpcFault fault) =>
        _slots[Count - 1].Length > 0 || Fail(EpcRule.NotEmpty, EpcField.Value, position, 0, ref fault);

    /// <summary>Whether a bracket with an application identifier stands at the position.</summary>
    internal static bool IsIdentifierAt(ReadOnlySpan<byte> text, int position) =>
        text[position] == '(' && BracketAt(text, position, out _) > 0;

    private static bool Fail(EpcRule rule, EpcField field, int position, ulong found, ref EpcFault fault)
    {
        fault = new EpcFault(rule, field, EpcPositionUnit.Character, position, found);
        return false;
    }

    // The length of "(nn)" at the position, if it is an application identifier; otherwise 0.
    private static int BracketAt(ReadOnlySpan<byte> text, int position, out int ai)
    {
        ai = Ai.Read(text.Slice(position + 1));
        int close = position + 1 + Ai.DigitsOf(ai);
        return ai != 0 && close < text.Length && text[close] == ')' ? close + 1 - position : 0;
    }

    private bool TryReadBracketed(ReadOnlySpan<byte> text, ref EpcFault fault)
    {
        int position = 0;
        while (position < text.Length)
        {
            int bracket = BracketAt(text, position, out int ai);
            if (bracket == 0 || text[position] != '(')
            {
                return Fail(EpcRule.ApplicationIdentifierKnown, EpcField.ApplicationIdentifier, position, text[position], ref fault);
            }

            if (!TryBegin(ai, position, ref fault))
            {
                return false;
            }

            position += bracket;
            while (position < text.Length && !IsIdentifierAt(text, position))
            {
                // A backslash keeps a bracket from being taken for an application identifier.
                position += text[position] == '\\' && position + 1 < text.Length && text[position + 1] == '(' ? 1 : 0;
                if (!TryAdd(text[position], position, ref fault))
                {
                    return false;
                }

                position++;
            }

            if (!TryEnd(position, ref fault))
            {
                return false;
            }
        }

        return true;
    }

    private bool TryReadRaw(ReadOnlySpan<byte> text, ref EpcFault fault)
    {
        // A symbology identifier and a first function character may stand in front.
        int position = text[0] == ']' ? 3 : 0;
        position += position < text.Length && text[position] == GroupSeparator ? 1 : 0;
        if (position >= text.Length)
        {
            return Fail(EpcRule.NotEmpty, EpcField.Value, position, 0, ref fault);
        }

        while (position < text.Length)
        {
            int ai = Ai.Read(text.Slice(position));
            if (ai == 0)
            {
                return Fail(EpcRule.ApplicationIdentifierKnown, EpcField.ApplicationIdentifier, position, text[position], ref fault);
            }

            int start = position;
            position += Ai.DigitsOf(ai);
            if (!TryBegin(ai, start, ref fault) || !TryReadRawValue(text, Ai.PredefinedLength(Ai.FirstTwo(ai)), ref position, ref fault))
            {
                return false;
            }
        }

        return true;
    }

    private bool TryReadRawValue(ReadOnlySpan<byte> text, int predefined, ref int position, ref EpcFault fault)
    {
        int start = position;
        int end = predefined > 0 ? position + predefined : text.Length;
        while (position < text.Length && position < end && text[position] != GroupSeparator)
        {
            if (!TryAdd(text[position], position, ref fault))
            {
                return false;
            }

            position++;
        }

        if (predefined > 0 && position < end)
        {
            return Fail(EpcRule.DigitCount, EpcField.Value, start, (ulong)(position - start), ref fault);
        }

        position += position < text.Length && text[position] == GroupSeparator ? 1 : 0;
        return TryEnd(position, ref fault);
    }
}
