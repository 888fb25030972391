using System;
using ToolLedger.Identifiers.Schemes;

namespace ToolLedger.Identifiers.Gen2;

/// <content>URIs of a memory: tag URIs with control fields, and raw URIs.</content>
public readonly partial struct EpcMemory
{
    /// <summary>The tag URI with its control fields (GS1 TDS 2.3, chapter 12), or the raw URI where the memory does not
    /// decode.</summary>
    /// <returns>The URI.</returns>
    public string ToTagUri()
    {
        if (!TryDecode(EpcDecoding.Lenient, out EpcFields fields, out _))
        {
            return ToRawUri();
        }

        Span<byte> room = stackalloc byte[2 * TextSink.Room];
        Span<byte> plain = stackalloc byte[TextSink.Room];
        fields.TryFormatTagUri(plain, out int length);
        int start = "urn:epc:tag:".Length;
        var sink = new TextSink(room);
        sink.Add(plain.Slice(0, start));
        ControlFields.Write(Parts(), ref sink);
        sink.Add(plain.Slice(start, length - start));
        return AsciiText.ToText(room.Slice(0, sink.Length));
    }

    /// <summary>The raw URI: <c>urn:epc:raw:N.xHEX</c>, and with the toggle set <c>urn:epc:raw:N.xAFI.xHEX</c>.</summary>
    /// <returns>The URI.</returns>
    public string ToRawUri()
    {
        if (!Control.Toggle)
        {
            return Epc.ToRawUri();
        }

        Span<byte> room = stackalloc byte[TextSink.Room];
        Span<byte> digits = stackalloc byte[TextSink.Room];
        Epc.TryFormatHex(digits, out int count);
        var sink = new TextSink(room);
        sink.Add("urn:epc:raw:"u8);
        sink.AddNumber((ulong)Epc.BitCount);
        sink.Add(".x"u8);
        ControlFields.WriteHex(Afi, 2, ref sink);
        sink.Add(".x"u8);
        sink.Add(digits.Slice(0, count));
        return AsciiText.ToText(room.Slice(0, sink.Length));
    }

    /// <summary>Reads a tag URI with or without control fields, or a raw URI with or without AFI.</summary>
    /// <param name="uri">The URI: at most 512 characters.</param>
    /// <param name="memory">The memory, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken and where, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the URI is valid and the length field can count its bits.</returns>
    public static bool TryParseUri(ReadOnlySpan<char> uri, out EpcMemory memory, out EpcFault fault)
    {
        Span<byte> room = stackalloc byte[EpcFields.MaxUriLength];
        memory = default;
        if (!AsciiText.TryNarrow(uri, room, out ReadOnlySpan<byte> text, out fault))
        {
            return false;
        }

        MemoryUriParts parts = default;
        Epc epc;
        bool read = text.StartsWith("urn:epc:raw:"u8)
            ? RawUri.TryRead(text, ref parts, out epc, ref fault)
            : TryReadTag(text, ref parts, out epc, ref fault);
        if (read && epc.BitCount > 16 * ProtocolControl.MaxLengthInWords)
        {
            fault = new EpcFault(EpcRule.LengthField, EpcField.Length, EpcPositionUnit.None, 0, (ulong)epc.BitCount);
            return false;
        }

        memory = read ? FromParts(parts, epc) : default;
        return read;
    }

    private static bool TryReadTag(ReadOnlySpan<byte> text, ref MemoryUriParts parts, out Epc epc, ref EpcFault fault)
    {
        epc = default;
        if (!text.StartsWith("urn:epc:tag:"u8))
        {
            fault = new EpcFault(EpcRule.UriPrefix, EpcField.Scheme, EpcPositionUnit.Character, 0, (ulong)text.Length);
            return false;
        }

        int position = "urn:epc:tag:".Length;
        IdentityBits bits = default;
        Span<ulong> words = stackalloc ulong[Bits.Words];
        if (!ControlFields.TryRead(text, ref position, ref parts, ref fault)
            || !TagUri.TryReadBody(text, position, ref bits, words, out _, ref fault))
        {
            return false;
        }

        epc = new EpcFields(bits).ToEpc();
        return true;
    }

    private MemoryUriParts Parts() => new()
    {
        Low = Control.LowByte,
        UserMemory = Control.UserMemory,
        HasFirst = Control.HasXpc,
        First = Extended.Word,
        HasSecond = _hasSecond,
        Second = SecondExtendedWord,
    };
}
