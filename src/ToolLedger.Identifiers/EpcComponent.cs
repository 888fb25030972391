using System;
using System.Buffers.Binary;

namespace ToolLedger.Identifiers;

/// <summary>
/// One component of an identity: up to 32 characters of ASCII, held in the value itself. Digits keep their leading zeros.
/// </summary>
/// <remarks>The default value is empty. Immutable, and therefore safe for use by any number of threads.</remarks>
public readonly partial struct EpcComponent : IEquatable<EpcComponent>
{
    /// <summary>The largest number of characters: 32.</summary>
    public const int MaxLength = 32;

    internal const int MaxDigits = 19;

    // One form for each text, so that equality is equality of fields: 1 to 19 digits are a number and their count;
    // everything else is characters, the first one in the most significant byte of _word0, zero behind the last.
    private readonly ulong _word0;
    private readonly ulong _word1;
    private readonly ulong _word2;
    private readonly ulong _word3;
    private readonly byte _length;
    private readonly bool _digits;

    // Trusted: the number has at most that many digits, and there are at most 19.
    internal EpcComponent(ulong number, int digitCount)
    {
        _word0 = number;
        _word1 = 0;
        _word2 = 0;
        _word3 = 0;
        _length = (byte)digitCount;
        _digits = digitCount > 0;
    }

    // Trusted: not 1 to 19 digits, and zero behind the last character.
    internal EpcComponent(ulong word0, ulong word1, ulong word2, ulong word3, int length)
    {
        _word0 = word0;
        _word1 = word1;
        _word2 = word2;
        _word3 = word3;
        _length = (byte)length;
        _digits = false;
    }

    /// <summary>The number of characters, 0 to 32.</summary>
    public int Length => _length;

    /// <summary>Whether the text is 1 to 19 decimal digits and nothing else.</summary>
    public bool IsNumber => _digits;

    /// <summary>The number that the digits write; 0 unless <see cref="IsNumber"/>.</summary>
    public ulong Number => _digits ? _word0 : 0;

    internal bool HasLeadingZero => _digits && _length > 1 && _word0 < DecimalText.PowerOfTen(_length - 1);

    internal ulong Word(int index) => index switch { 0 => _word0, 1 => _word1, 2 => _word2, _ => _word3 };

    /// <summary>The character at a position.</summary>
    /// <param name="index">The position, from 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such position.</exception>
    public char this[int index]
    {
        get
        {
            if ((uint)index >= _length)
            {
                throw new ArgumentOutOfRangeException(nameof(index), index, "There is no character at this position.");
            }

            return (char)CharacterAt(index);
        }
    }

    internal byte CharacterAt(int index) => _digits
        ? (byte)('0' + (int)(_word0 / DecimalText.PowerOfTen(_length - 1 - index) % 10))
        : (byte)(Word(index >> 3) >> (56 - (8 * (index & 7))));

    /// <summary>Whether both hold the same characters.</summary>
    /// <param name="other">The other component.</param>
    /// <returns>The answer.</returns>
    public bool Equals(EpcComponent other) =>
        _word0 == other._word0 && _word1 == other._word1 && _word2 == other._word2 && _word3 == other._word3
        && _length == other._length && _digits == other._digits;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is EpcComponent other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => (int)EpcHash.Mix(EpcHash.Mix(_word0, _word1, _length), EpcHash.Mix(_word2, _word3, 0), 0);

    /// <summary>The characters, without escapes.</summary>
    /// <returns>The text.</returns>
    public override string ToString()
    {
        Span<char> text = stackalloc char[MaxLength];
        for (int i = 0; i < _length; i++)
        {
            text[i] = (char)CharacterAt(i);
        }

        return text.Slice(0, _length).ToString();
    }

    /// <summary>Takes characters of printable ASCII.</summary>
    /// <param name="text">At most 32 characters, each 21h to 7Eh.</param>
    /// <param name="component">The component, or the empty one when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the text is short enough and every character is allowed.</returns>
    public static bool TryCreate(ReadOnlySpan<char> text, out EpcComponent component)
    {
        component = default;
        if (text.Length > MaxLength)
        {
            return false;
        }

        Span<byte> bytes = stackalloc byte[MaxLength];
        for (int i = 0; i < text.Length; i++)
        {
            if (text[i] is <= ' ' or > '~')
            {
                return false;
            }

            bytes[i] = (byte)text[i];
        }

        component = FromAscii(bytes.Slice(0, text.Length));
        return true;
    }

    /// <summary>Whether both hold the same characters.</summary>
    /// <param name="left">One component.</param>
    /// <param name="right">The other component.</param>
    /// <returns>The answer.</returns>
    public static bool operator ==(EpcComponent left, EpcComponent right) => left.Equals(right);

    /// <summary>Whether the characters differ.</summary>
    /// <param name="left">One component.</param>
    /// <param name="right">The other component.</param>
    /// <returns>The answer.</returns>
    public static bool operator !=(EpcComponent left, EpcComponent right) => !left.Equals(right);

    // Trusted: at most 32 bytes of ASCII.
    internal static EpcComponent FromAscii(ReadOnlySpan<byte> text)
    {
        if (text.Length is > 0 and <= MaxDigits && DecimalText.TryRead(text, out ulong number))
        {
            return new EpcComponent(number, text.Length);
        }

        return new EpcComponent(Pack(text, 0), Pack(text, 8), Pack(text, 16), Pack(text, 24), text.Length);
    }

    // Trusted: characters from the first byte of word0 on, zero behind the last one.
    internal static EpcComponent FromWords(ulong word0, ulong word1, ulong word2, ulong word3, int length)
    {
        if (length is > 0 and <= MaxDigits && DecimalText.TryReadPacked(word0, word1, word2, length, out ulong number))
        {
            return new EpcComponent(number, length);
        }

        return new EpcComponent(word0, word1, word2, word3, length);
    }

    /// <summary>The characters as words, the first one in the most significant byte.</summary>
    internal void Unpack(out ulong word0, out ulong word1, out ulong word2, out ulong word3)
    {
        if (!_digits)
        {
            (word0, word1, word2, word3) = (_word0, _word1, _word2, _word3);
            return;
        }

        Span<byte> text = stackalloc byte[MaxLength];
        DecimalText.Write(_word0, text.Slice(0, _length));
        word0 = BinaryPrimitives.ReadUInt64BigEndian(text);
        word1 = BinaryPrimitives.ReadUInt64BigEndian(text.Slice(8));
        word2 = BinaryPrimitives.ReadUInt64BigEndian(text.Slice(16));
        word3 = 0;
    }

    private static ulong Pack(ReadOnlySpan<byte> text, int from)
    {
        ulong word = 0;
        for (int i = from; i < text.Length && i < from + 8; i++)
        {
            word |= (ulong)text[i] << (56 - (8 * (i - from)));
        }

        return word;
    }
}
