using System;
using System.Globalization;

namespace ToolLedger.Identifiers;

/// <content>Identity views.</content>
public readonly partial struct Epc
{
    /// <summary>The coding scheme that the header selects. It says nothing about whether the rest can be decoded.</summary>
    public EpcScheme Scheme => _bitCount >= 8 && _high >> 56 == 0 ? EpcScheme.Unprogrammed : EpcScheme.Unknown;

    /// <summary>The tag URI, or the raw URI where the bits cannot be decoded. Never throws.</summary>
    /// <returns>The URI.</returns>
    public string ToTagUri() => ToRawUri();

    /// <summary>Writes what <see cref="ToTagUri"/> gives.</summary>
    /// <param name="destination">Where to write.</param>
    /// <param name="charsWritten">How many characters were written; 0 when the answer is <see langword="false"/>.</param>
    /// <returns>Whether there was room.</returns>
    public bool TryFormatTagUri(Span<char> destination, out int charsWritten)
    {
        string text = ToTagUri();
        charsWritten = text.AsSpan().TryCopyTo(destination) ? text.Length : 0;
        return charsWritten == text.Length;
    }

    /// <summary>Writes what <see cref="ToTagUri"/> gives, as UTF-8.</summary>
    /// <param name="utf8Destination">Where to write.</param>
    /// <param name="bytesWritten">How many bytes were written; 0 when the answer is <see langword="false"/>.</param>
    /// <returns>Whether there was room.</returns>
    public bool TryFormatTagUri(Span<byte> utf8Destination, out int bytesWritten)
    {
        string text = ToTagUri();
        bool room = text.Length <= utf8Destination.Length;
        bytesWritten = room ? text.Length : 0;
        for (int i = 0; i < bytesWritten; i++)
        {
            utf8Destination[i] = (byte)text[i];
        }

        return room;
    }

    /// <summary>The pure identity URI, or the raw URI where the bits cannot be decoded. Never throws.</summary>
    /// <returns>The URI.</returns>
    public string ToPureIdentityUri() => ToRawUri();

    /// <summary>The raw URI <c>urn:epc:raw:N.xHEX</c> (GS1 TDS 2.3, s.12): N is the bit count rounded up to whole 16-bit
    /// words, as the length field of a tag counts. Every value has one.</summary>
    /// <returns>The URI.</returns>
    public string ToRawUri()
    {
        int words = (_bitCount + 15) / 16;
        return string.Format(CultureInfo.InvariantCulture, "urn:epc:raw:{0}.x{1}", words * 16, ToString().PadRight(words * 4, '0'));
    }
}
