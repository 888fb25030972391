namespace ToolLedger.Identifiers.Gen2;

/// <summary>
/// The protocol control word at bits 10h to 1Fh of a tag's EPC memory (GS1 TDS 2.3, chapter 9).
/// </summary>
/// <remarks>
/// <para>What a reader reports as PC during inventory may be the PacketPC, whose last eight bits belong to XPC_W1; do not take
/// them for attribute bits without knowing the source.</para>
/// <para>The default value has length 0: no EPC. Immutable, and therefore safe for use by any number of threads.</para>
/// </remarks>
/// <param name="Word">The 16 bits.</param>
public readonly record struct ProtocolControl(ushort Word)
{
    /// <summary>The largest length that the field can hold: 31 words.</summary>
    public const int MaxLengthInWords = 31;

    /// <summary>The length of what follows, in 16-bit words: 0 to 31 (bits 10h to 14h).</summary>
    public int LengthInWords => Word >> 11;

    /// <summary>Bit 15h: user memory indicator of Gen2 version 1 and 2, read-user-memory of version 3.</summary>
    public bool UserMemory => (Word & 0x0400) != 0;

    /// <summary>Bit 16h: an extended protocol control word exists and is not zero.</summary>
    public bool HasXpc => (Word & 0x0200) != 0;

    /// <summary>Bit 17h, the toggle: set when the memory holds an identifier of ISO/IEC 15961, not an EPC.</summary>
    public bool Toggle => (Word & 0x0100) != 0;

    /// <summary>Bits 18h to 1Fh: attribute bits (Gen2 version 1) when the toggle is clear, the AFI when it is set.</summary>
    public byte LowByte => (byte)Word;

    /// <summary>The word for an EPC without attribute bits: length in words, everything else clear.</summary>
    /// <param name="epc">An EPC of at most 496 bits.</param>
    /// <param name="control">The word, or the default value when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the length field can count the EPC.</returns>
    public static bool TryFor(Epc epc, out ProtocolControl control)
    {
        int words = (epc.BitCount + 15) / 16;
        bool fits = words <= MaxLengthInWords;
        control = fits ? new ProtocolControl((ushort)(words << 11)) : default;
        return fits;
    }
}
