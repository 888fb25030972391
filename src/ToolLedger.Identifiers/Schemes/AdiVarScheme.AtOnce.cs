#if NET
using System;

namespace ToolLedger.Identifiers.Schemes;

/// <content>From the usual URI straight to bits: capital letters, digits and hyphens, nothing escaped.</content>
internal sealed partial class AdiVarScheme
{
    internal override bool TryEncodeAtOnce(
        ReadOnlySpan<byte> text, int position, uint filter, Span<ulong> words, out int used)
    {
        used = 0;
        if (!CharacterMap.TryMap(text, position, out CharacterMap map))
        {
            return false;
        }

        ulong firstDot = map.Dots & (~map.Dots + 1);
        ulong secondDot = map.Dots ^ firstDot;
        int cage = CharacterMap.First(firstDot);
        int partEnd = CharacterMap.First(secondDot);
        int part = partEnd - cage - 1;
        int serial = map.Length - partEnd - 1;
        if (cage is not (5 or 6) || (secondDot & (secondDot - 1)) != 0 || part > MaximumPart || serial is < 1 or > MaximumSerial
            || (map.Digits | map.Capitals | map.Dots) != map.All)
        {
            return false;
        }

        ulong code = TextBefore.Characters(text, position + cage, cage);
        if ((CharacterSets.OutsideCage(code) << (64 - (8 * cage))) != 0)
        {
            return false;
        }

        int offset = CageOffset + (6 * (6 - cage));
        PackedText.WriteSixBefore(words, ref offset, text, position + cage, cage);
        words[0] |= ((ulong)Header << 56) | ((ulong)filter << 50) | (cage == 5 ? (ulong)Space << (58 - CageOffset) : 0);
        offset = PartOffset;
        PackedText.WriteSixBefore(words, ref offset, text, position + partEnd, part);
        PackedText.WriteSixBefore(words, ref offset, text, text.Length, serial);
        used = offset;
        return true;
    }
}
#endif
