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

    internal static ReadOnlySpan<EpcCodec> Codecs => All;

    internal static EpcCodec? OfHeader(byte header) => ByHeader[header];

    internal static EpcCodec? Of(EpcScheme scheme) => (uint)scheme < (uint)ByScheme.Length ? ByScheme[(int)scheme] : null;

    /// <summary>The codec whose tag URI name stands in front of the next colon.</summary>
    internal static EpcCodec? OfName(ReadOnlySpan<byte> name)
    {
        foreach (EpcCodec codec in All)
        {
            ReadOnlySpan<byte> own = codec.UriStart.AsSpan(UriStartLength);
            if (own.Length == name.Length + 1 && own.StartsWith(name))
            {
                return codec;
            }
        }

        return null;
    }

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
