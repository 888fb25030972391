using System;
using ToolLedger.Identifiers.Schemes;

namespace ToolLedger.Identifiers;

/// <content>Identity views.</content>
public readonly partial struct Epc
{
    /// <summary>The coding scheme that the header selects. It says nothing about whether the rest can be decoded.</summary>
    public EpcScheme Scheme => _bitCount >= 8 ? Headers.SchemeOf((byte)(_high >> 56)) : EpcScheme.Unknown;

    /// <summary>The tag URI, or the raw URI where the bits cannot be decoded. Never throws.</summary>
    /// <returns>The URI.</returns>
    public string ToTagUri() => EpcFields.TryDecode(this, out EpcFields fields) ? fields.ToTagUri() : ToRawUri();

    /// <summary>Writes what <see cref="ToTagUri"/> gives.</summary>
    /// <param name="destination">Where to write.</param>
    /// <param name="charsWritten">How many characters were written; 0 when the answer is <see langword="false"/>.</param>
    /// <returns>Whether there was room.</returns>
    public bool TryFormatTagUri(Span<char> destination, out int charsWritten) => EpcFields.TryDecode(this, out EpcFields fields)
        ? fields.TryFormatTagUri(destination, out charsWritten)
        : RawUri.TryFormat(this, destination, out charsWritten);

    /// <summary>Writes what <see cref="ToTagUri"/> gives, as UTF-8.</summary>
    /// <param name="utf8Destination">Where to write.</param>
    /// <param name="bytesWritten">How many bytes were written; 0 when the answer is <see langword="false"/>.</param>
    /// <returns>Whether there was room.</returns>
    public bool TryFormatTagUri(Span<byte> utf8Destination, out int bytesWritten) => EpcFields.TryDecode(this, out EpcFields fields)
        ? fields.TryFormatTagUri(utf8Destination, out bytesWritten)
        : RawUri.TryFormat(this, utf8Destination, out bytesWritten);

    /// <summary>The pure identity URI, or the raw URI where the bits cannot be decoded. Never throws.</summary>
    /// <returns>The URI.</returns>
    public string ToPureIdentityUri() => EpcFields.TryDecode(this, out EpcFields fields) ? fields.Identity.ToUri() : ToRawUri();

    /// <summary>The typed value that the bits decode to, such as <see cref="Giai"/>.</summary>
    /// <typeparam name="TKey">The type of the value.</typeparam>
    /// <param name="key">The typed value, or the default value when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the bits decode to an identity of the kind that the type stands for.</returns>
    public bool TryGetKey<TKey>(out TKey key)
        where TKey : struct, IEpcKey<TKey>
    {
        if (EpcFields.TryDecode(this, out EpcFields fields))
        {
            return fields.Identity.TryGetKey(out key);
        }

        key = default;
        return false;
    }

    /// <summary>The raw URI <c>urn:epc:raw:N.xHEX</c> (GS1 TDS 2.3, s.12): N is the bit count rounded up to whole 16-bit
    /// words, as the length field of a tag counts. Every value has one.</summary>
    /// <returns>The URI.</returns>
    public string ToRawUri() => RawUri.Format(this);

    /// <summary>Reads a raw URI without AFI, <c>urn:epc:raw:N.xHEX</c> or the deprecated <c>urn:epc:raw:N.DECIMAL</c>.</summary>
    /// <param name="uri">The URI.</param>
    /// <param name="epc">The value, or the empty value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken and where, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the URI is valid.</returns>
    public static bool TryParseRawUri(ReadOnlySpan<char> uri, out Epc epc, out EpcFault fault)
    {
        const int Longest = 20 + ((MaxBitCount + 1) / 4);
        epc = default;
        if (uri.Length > Longest)
        {
            fault = new EpcFault(EpcRule.TextLength, EpcField.None, EpcPositionUnit.Character, Longest, (ulong)uri.Length);
            return false;
        }

        Span<byte> room = uri.Length <= 512 ? stackalloc byte[512] : new byte[uri.Length];
        MemoryUriParts parts = default;
        if (!AsciiText.TryNarrow(uri, room, out ReadOnlySpan<byte> text, out fault) || !RawUri.TryRead(text, ref parts, out epc, ref fault))
        {
            return false;
        }

        if (parts.Toggle)
        {
            epc = default;
            fault = new EpcFault(EpcRule.ToggleClear, EpcField.Control, EpcPositionUnit.None, 0, parts.Low);
        }

        return !parts.Toggle;
    }
}
