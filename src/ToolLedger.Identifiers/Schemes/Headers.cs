using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>The first eight bits (GS1 TDS 2.3, Table 14-1), and what stands behind the last field.</summary>
internal static class Headers
{
    private static readonly EpcScheme[] Plus =
    [
        EpcScheme.CpiPlusPlus, EpcScheme.GsrnPlusPlus, EpcScheme.GsrnpPlusPlus, EpcScheme.SglnPlusPlus, // E6
        EpcScheme.GdtiPlusPlus, EpcScheme.GraiPlusPlus, EpcScheme.SgcnPlusPlus, EpcScheme.ItipPlusPlus, // EA
        EpcScheme.GiaiPlusPlus, EpcScheme.SsccPlusPlus, EpcScheme.CpiPlus, EpcScheme.GraiPlus, // EE
        EpcScheme.SglnPlus, EpcScheme.ItipPlus, EpcScheme.GsrnPlus, EpcScheme.GsrnpPlus, // F2
        EpcScheme.GdtiPlus, EpcScheme.SgtinPlus, EpcScheme.SgcnPlus, EpcScheme.SsccPlus, // F6
        EpcScheme.GiaiPlus, EpcScheme.DsgtinPlus, EpcScheme.DsgtinPlusPlus, EpcScheme.SgtinPlusPlus, // FA
    ];

    /// <summary>The scheme that a header selects, read or not.</summary>
    internal static EpcScheme SchemeOf(byte header)
    {
        if (header == 0)
        {
            return EpcScheme.Unprogrammed;
        }

        EpcCodec? codec = SchemeList.OfHeader(header);
        if (codec is not null)
        {
            return codec.Scheme;
        }

        return header is >= 0xE6 and <= 0xFD ? Plus[header - 0xE6] : EpcScheme.Unknown;
    }

    internal static EpcFault Fault(byte header, EpcCodec? codec, int bitCount)
    {
        if (bitCount < 8 || codec is not null)
        {
            EpcRule rule = bitCount > Bits.MaximumDecoded ? EpcRule.MaximumLength : EpcRule.EnoughBits;
            return new EpcFault(rule, EpcField.None, EpcPositionUnit.Bit, bitCount, (ulong)bitCount);
        }

        EpcRule broken = SchemeOf(header) switch
        {
            EpcScheme.Unprogrammed => EpcRule.Programmed,
            EpcScheme.Unknown => EpcRule.HeaderAssigned,
            _ => EpcRule.SchemeRead,
        };
        return new EpcFault(broken, EpcField.Header, EpcPositionUnit.Bit, 0, header);
    }

    /// <summary>Strict: bits behind the end are zero and only fill the last 16-bit word (GS1 TDS 2.3, s.18.1.2).</summary>
    internal static bool AcceptsPadding(ReadOnlySpan<ulong> words, int used, int bitCount, ref EpcFault fault)
    {
        bool zero = Bits.AreZero(words, used, bitCount);
        if (zero && bitCount <= ((used + 15) & ~15))
        {
            return true;
        }

        int position = zero ? used : Bits.FirstSet(words, used, bitCount);
        fault = new EpcFault(EpcRule.PaddingZero, EpcField.Padding, EpcPositionUnit.Bit, position, zero ? (ulong)bitCount : 1);
        return false;
    }
}
