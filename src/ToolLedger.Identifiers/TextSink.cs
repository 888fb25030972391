using System;
using System.Buffers.Binary;

namespace ToolLedger.Identifiers;

/// <summary>
/// Writes ASCII. The caller gives room for the longest text of its kind, so that no write needs to ask.
/// </summary>
internal ref struct TextSink
{
    /// <summary>Room for the longest tag URI, pure identity URI, element string or pattern of this library.</summary>
    internal const int Room = 384;

    private readonly Span<byte> _room;
    private int _length;

    internal TextSink(Span<byte> room)
    {
        _room = room;
        _length = 0;
    }

    internal readonly int Length => _length;

    /// <summary>What was written from a position on.</summary>
    internal readonly ReadOnlySpan<byte> From(int position) => _room.Slice(position, _length - position);

    internal void Add(scoped ReadOnlySpan<byte> text)
    {
        text.CopyTo(_room.Slice(_length));
        _length += text.Length;
    }

    internal void Add(byte character) => _room[_length++] = character;

    /// <summary>Puts a character in front of what was written from a position on.</summary>
    internal void Insert(int position, byte character)
    {
        _room.Slice(position, _length - position).CopyTo(_room.Slice(position + 1));
        _room[position] = character;
        _length++;
    }

    internal void AddNumber(ulong number) => AddDigits(number, DecimalText.CountDigits(number));

    internal void AddDigits(ulong number, int count)
    {
        if (count > 0)
        {
            DecimalText.WriteWithRoom(number, count, _room.Slice(_length));
            _length += count;
        }
    }

    /// <summary>Adds a component as it stands in a URI, with its escapes.</summary>
    internal void AddEscaped(in EpcComponent component)
    {
        if (component.IsNumber)
        {
            AddDigits(component.Number, component.Length);
            return;
        }

        int left = component.Length;
        for (int i = 0; left > 0; i++, left -= 8)
        {
            ulong word = component.Word(i);
            if (CharacterSets.Escaped(word) == 0)
            {
                // The room behind the text is free, so that a whole word can be written.
                BinaryPrimitives.WriteUInt64BigEndian(_room.Slice(_length), word);
                _length += Math.Min(left, 8);
            }
            else
            {
                AddEscapedWord(word, Math.Min(left, 8));
            }
        }
    }

    /// <summary>Adds the characters of a component without escapes.</summary>
    internal void AddPlain(in EpcComponent component)
    {
        if (component.IsNumber)
        {
            AddDigits(component.Number, component.Length);
            return;
        }

        for (int i = 0; i < component.Length; i++)
        {
            Add(component.CharacterAt(i));
        }
    }

    private void AddEscapedWord(ulong word, int count)
    {
        for (int i = 0; i < count; i++, word <<= 8)
        {
            uint character = (uint)(word >> 56);
            if (CharacterSets.IsEscaped(character))
            {
                Add((byte)'%');
                Add(HexText.UpperDigit(character >> 4));
                Add(HexText.UpperDigit(character & 15));
            }
            else
            {
                Add((byte)character);
            }
        }
    }
}
