using System;

namespace ToolLedger.Identifiers;

/// <summary>Hexadecimal text to the words that codecs read, and back.</summary>
internal static class HexWords
{
    internal static bool TryRead(ReadOnlySpan<byte> hex, Span<ulong> words, out int bitCount)
    {
        bitCount = hex.Length * 4;
        if (hex.Length == 24)
        {
            bool good = HexText.TryReadWord(hex.Slice(0, 16), out words[0]) & HexText.TryReadWord(hex.Slice(8, 16), out ulong low);
            words[1] = low << 32;
            return good;
        }

        if (bitCount > Bits.MaximumDecoded)
        {
            return false;
        }

        bool valid = true;
        for (int at = 0; at < hex.Length; at += 16)
        {
            valid &= HexText.TryReadWord(hex.Slice(at, Math.Min(16, hex.Length - at)), out words[at >> 4]);
        }

        return valid;
    }

    /// <summary>Why <see cref="TryRead"/> said no.</summary>
    internal static EpcFault Fault(ReadOnlySpan<byte> hex)
    {
        for (int i = 0; i < hex.Length; i++)
        {
            if (HexText.Nibble(hex[i]) > 15)
            {
                return new EpcFault(EpcRule.HexDigits, EpcField.None, EpcPositionUnit.Character, i, hex[i]);
            }
        }

        return new EpcFault(EpcRule.TextLength, EpcField.None, EpcPositionUnit.Character, Bits.MaximumDecoded / 4, (ulong)hex.Length);
    }

    internal static bool TryWrite(ReadOnlySpan<ulong> words, int bitCount, Span<byte> destination, out int written)
    {
        int count = (bitCount + 3) >> 2;
        if (destination.Length < count)
        {
            written = 0;
            return false;
        }

        written = count;
        if (count < 16)
        {
            HexText.Write(words[0], destination.Slice(0, count));
            return true;
        }

        for (int at = 0; at + 16 <= count; at += 16)
        {
            HexText.Write(words[at >> 4], destination.Slice(at, 16));
        }

        // What is left is written together with digits that stand there already: sixteen at a time need no loop.
        HexText.Write(Bits.Read(words, (4 * count) - 64, 64), destination.Slice(count - 16, 16));
        return true;
    }
}
