using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>The coding schemes whose fields are read: the one list to touch when a scheme is added.</summary>
internal static class SchemeList
{
    private static readonly EpcCodec[] All =
    [
        Sgtin96Scheme.Codec,
        Sgtin198Scheme.Codec,
        Sscc96Scheme.Codec,
        Sgln96Scheme.Codec,
        Sgln195Scheme.Codec,
        Grai96Scheme.Codec,
        Grai170Scheme.Codec,
        Giai96Scheme.Codec,
        Giai202Scheme.Codec,
        Gsrn96Scheme.Codec,
        Gsrnp96Scheme.Codec,
        Gdti96Scheme.Codec,
        Gdti113Scheme.Codec,
        Gdti174Scheme.Codec,
        Cpi96Scheme.Codec,
        CpiVarScheme.Codec,
        Sgcn96Scheme.Codec,
        Itip110Scheme.Codec,
        Itip212Scheme.Codec,
        Gid96Scheme.Codec,
        Usdod96Scheme.Codec,
        AdiVarScheme.Codec,
    ];

    private static readonly EpcCodec?[] ByHeader = IndexByHeader();
    private static readonly EpcCodec?[] ByScheme = IndexByScheme();
    private static readonly EpcCodec?[] ByName = IndexByName();

    internal static ReadOnlySpan<EpcCodec> Codecs => All;

    internal static EpcCodec? OfHeader(byte header) => ByHeader[header];

    internal static EpcCodec? Of(EpcScheme scheme) => (uint)scheme < (uint)ByScheme.Length ? ByScheme[(int)scheme] : null;

    /// <summary>The codec whose tag URI name begins a text, up to a colon; the length of the name without it comes out.</summary>
    internal static EpcCodec? OfName(ReadOnlySpan<byte> text, out int length)
    {
        length = 0;
        if (text.Length < 8)
        {
            return null;
        }

        for (int slot = SlotOf(text); ByName[slot] is { } codec; slot = (slot + 1) & (NameSlots - 1))
        {
            length = codec.Name.Length;
            if (EpcCodec.FirstEight(text) == codec.NameKey && text.Length > length && text[length] == ':'
                && (length <= 8 || text.StartsWith(codec.UriStart.AsSpan(UriStartLength))))
            {
                return codec;
            }
        }

        length = 0;
        return null;
    }

    private static int SlotOf(ReadOnlySpan<byte> text)
    {
        return (int)((EpcCodec.FirstEight(text) * 0x63CA828DD5F4B3B3UL) >> 32) & (NameSlots - 1);
    }

    private static EpcCodec?[] IndexByName()
    {
        var index = new EpcCodec?[NameSlots];
        Span<byte> name = stackalloc byte[32];
        foreach (EpcCodec codec in All)
        {
            name.Clear();
            codec.UriStart.AsSpan(UriStartLength).CopyTo(name);
            int slot = SlotOf(name);
            while (index[slot] is not null)
            {
                slot = (slot + 1) & (NameSlots - 1);
            }

            index[slot] = codec;
        }

        return index;
    }

    // A power of two, several times the number of schemes.
    private const int NameSlots = 256;

    // "urn:epc:tag:"
    private const int UriStartLength = 12;

    private static EpcCodec?[] IndexByHeader()
    {
        var index = new EpcCodec?[256];
        foreach (EpcCodec codec in All)
        {
            index[codec.Header] = codec;
        }

        return index;
    }

    private static EpcCodec?[] IndexByScheme()
    {
        var index = new EpcCodec?[(int)EpcScheme.ItipPlusPlus + 1];
        foreach (EpcCodec codec in All)
        {
            index[(int)codec.Scheme] = codec;
        }

        return index;
    }
}
