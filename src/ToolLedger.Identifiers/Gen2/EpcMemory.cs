using System;
using ToolLedger.Identifiers.Schemes;

namespace ToolLedger.Identifiers.Gen2;

/// <summary>
/// The EPC memory of a Gen2 tag from the protocol control word on: PC, extended PC words where there are any, and the EPC or
/// other identifier of as many words as the PC says.
/// </summary>
/// <remarks>The default value is a memory of length 0. Immutable, and therefore safe for use by any number of threads.</remarks>
public readonly partial struct EpcMemory : IEquatable<EpcMemory>
{
    private readonly bool _hasSecond;

    private EpcMemory(
        ProtocolControl control, ExtendedProtocolControl extended, bool hasSecond, ushort second, Epc epc)
    {
        Control = control;
        Extended = extended;
        _hasSecond = hasSecond;
        SecondExtendedWord = second;
        Epc = epc;
    }

    /// <summary>The protocol control word.</summary>
    public ProtocolControl Control { get; }

    /// <summary>XPC_W1; the default value when the PC says that there is none.</summary>
    public ExtendedProtocolControl Extended { get; }

    /// <summary>XPC_W2; 0 when there is none.</summary>
    public ushort SecondExtendedWord { get; }

    /// <summary>The identifier: as many whole words as the PC's length field says.</summary>
    public Epc Epc { get; }

    /// <summary>The application family identifier; 0 while the toggle is clear.</summary>
    public byte Afi => Control.Toggle ? Control.LowByte : (byte)0;

    /// <summary>Takes a tag's answer to an inventory: PC, XPC words where the PC announces them, then the identifier.</summary>
    /// <param name="words">The answer in 16-bit words, without a CRC. Words behind the length field's count are ignored.</param>
    /// <param name="memory">The memory, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken and at which bit, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether all the words that the PC announces are there.</returns>
    public static bool TryFromAnswer(ReadOnlySpan<ushort> words, out EpcMemory memory, out EpcFault fault)
    {
        fault = default;
        memory = default;
        if (words.Length == 0)
        {
            return Fail(EpcRule.EnoughBits, EpcField.Length, 0, 0, ref fault);
        }

        var control = new ProtocolControl(words[0]);
        var extended = default(ExtendedProtocolControl);
        int at = 1;
        ushort second = 0;
        if (control.HasXpc)
        {
            if (words.Length < 2)
            {
                return Fail(EpcRule.EnoughBits, EpcField.Control, 16, 16, ref fault);
            }

            extended = new ExtendedProtocolControl(words[at++]);
            if (extended.HasSecondWord)
            {
                if (words.Length < 3)
                {
                    return Fail(EpcRule.EnoughBits, EpcField.Control, 32, 32, ref fault);
                }

                second = words[at++];
            }
        }

        ReadOnlySpan<ushort> rest = words.Slice(at);
        if (rest.Length < control.LengthInWords)
        {
            return Fail(EpcRule.LengthField, EpcField.Length, at * 16, (ulong)rest.Length, ref fault);
        }

        memory = new EpcMemory(
            control, extended, extended.HasSecondWord, second, Epc.FromWords(rest.Slice(0, control.LengthInWords)));
        return true;
    }

    /// <summary>Takes a tag's answer as hexadecimal digits; see <see cref="TryFromAnswer"/>.</summary>
    /// <param name="hex">The digits: at most 34 words.</param>
    /// <param name="memory">The memory, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken and where, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the text is whole words of hexadecimal digits and all the words that the PC announces are there.</returns>
    public static bool TryParseAnswer(ReadOnlySpan<char> hex, out EpcMemory memory, out EpcFault fault)
    {
        memory = default;
        Span<ushort> words = stackalloc ushort[ProtocolControl.MaxLengthInWords + 3];
        if (!Epc.TryParse(hex, out Epc bits))
        {
            fault = new EpcFault(EpcRule.HexDigits, EpcField.None, EpcPositionUnit.None, 0, (ulong)hex.Length);
            return false;
        }

        if (bits.BitCount % 16 != 0 || !bits.TryWriteWords(words, out int count))
        {
            fault = new EpcFault(EpcRule.LengthField, EpcField.Length, EpcPositionUnit.Bit, bits.BitCount, (ulong)bits.BitCount);
            return false;
        }

        return TryFromAnswer(words.Slice(0, count), out memory, out fault);
    }

    /// <summary>The memory that a writer would give a tag for an EPC: whole words, the length in the PC, nothing else set.</summary>
    /// <param name="epc">An EPC of at most 496 bits.</param>
    /// <param name="memory">The memory, or the default value when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the length field can count the EPC.</returns>
    public static bool TryFor(Epc epc, out EpcMemory memory)
    {
        bool fits = ProtocolControl.TryFor(epc, out ProtocolControl control);
        memory = fits ? new EpcMemory(control, default, false, 0, epc.ToWholeWords()) : default;
        return fits;
    }

    /// <summary>Decodes the identifier. The length field must be enough for the scheme; strict decoding wants it no
    /// larger either.</summary>
    /// <param name="decoding">What is asked of the bits behind the end of the coding.</param>
    /// <param name="fields">The fields, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken and where, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the memory holds an EPC that follows the rules of its scheme.</returns>
    public bool TryDecode(EpcDecoding decoding, out EpcFields fields, out EpcFault fault)
    {
        if (Control.Toggle)
        {
            fields = default;
            fault = new EpcFault(EpcRule.ToggleClear, EpcField.Control, EpcPositionUnit.None, 0, Afi);
            return false;
        }

        return EpcFields.TryDecode(Epc, decoding, out fields, out fault);
    }

    /// <summary>Writes the answer that <see cref="TryFromAnswer"/> reads.</summary>
    /// <param name="destination">Where to write: at most 34 words.</param>
    /// <param name="wordsWritten">How many words were written; 0 when the answer is <see langword="false"/>.</param>
    /// <returns>Whether there was room.</returns>
    public bool TryWriteAnswer(Span<ushort> destination, out int wordsWritten)
    {
        int front = 1 + (Control.HasXpc ? 1 : 0) + (_hasSecond ? 1 : 0);
        wordsWritten = 0;
        if (destination.Length < front || !Epc.TryWriteWords(destination.Slice(front), out int words))
        {
            return false;
        }

        destination[0] = Control.Word;
        if (front > 1)
        {
            destination[1] = Extended.Word;
        }

        if (front > 2)
        {
            destination[2] = SecondExtendedWord;
        }

        wordsWritten = front + words;
        return true;
    }

    /// <summary>Whether both hold the same words.</summary>
    /// <param name="other">The other memory.</param>
    /// <returns>The answer.</returns>
    public bool Equals(EpcMemory other) =>
        Control == other.Control && Extended == other.Extended && SecondExtendedWord == other.SecondExtendedWord && Epc == other.Epc;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is EpcMemory other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => Epc.GetHashCode() ^ (Control.Word << 16) ^ Extended.Word ^ (SecondExtendedWord << 8);

    /// <summary>The tag URI with control fields, or the raw URI.</summary>
    /// <returns>The URI.</returns>
    public override string ToString() => ToTagUri();

    /// <summary>Whether both hold the same words.</summary>
    /// <param name="left">One memory.</param>
    /// <param name="right">The other memory.</param>
    /// <returns>The answer.</returns>
    public static bool operator ==(EpcMemory left, EpcMemory right) => left.Equals(right);

    /// <summary>Whether any word differs.</summary>
    /// <param name="left">One memory.</param>
    /// <param name="right">The other memory.</param>
    /// <returns>The answer.</returns>
    public static bool operator !=(EpcMemory left, EpcMemory right) => !left.Equals(right);

    internal static EpcMemory FromParts(in MemoryUriParts parts, Epc epc) => new(
        parts.ControlFor(epc), new ExtendedProtocolControl(parts.First), parts.HasSecond, parts.Second, epc.ToWholeWords());

    private static bool Fail(EpcRule rule, EpcField field, int position, ulong found, ref EpcFault fault)
    {
        fault = new EpcFault(rule, field, EpcPositionUnit.Bit, position, found);
        return false;
    }
}
