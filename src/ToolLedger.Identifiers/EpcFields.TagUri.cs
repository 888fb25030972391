using System;
using ToolLedger.Identifiers.Schemes;

namespace ToolLedger.Identifiers;

/// <content>Tag URIs in and out.</content>
public readonly partial struct EpcFields
{
    /// <summary>The longest tag URI that is read: 512 characters.</summary>
    public const int MaxUriLength = 512;

    /// <summary>The tag URI <c>urn:epc:tag:...</c> without control fields.</summary>
    /// <returns>The URI; empty text for the default value.</returns>
    public string ToTagUri()
    {
        Span<byte> room = stackalloc byte[TextSink.Room];
        return AsciiText.ToText(room.Slice(0, WriteTagUri(_bits, room)));
    }

    /// <summary>Writes what <see cref="ToTagUri"/> gives.</summary>
    /// <param name="destination">Where to write.</param>
    /// <param name="charsWritten">How many characters were written; 0 when the answer is <see langword="false"/>.</param>
    /// <returns>Whether there was room.</returns>
    public bool TryFormatTagUri(Span<char> destination, out int charsWritten)
    {
        Span<byte> room = stackalloc byte[TextSink.Room];
        return AsciiText.TryWiden(room.Slice(0, WriteTagUri(_bits, room)), destination, out charsWritten);
    }

    /// <summary>Writes what <see cref="ToTagUri"/> gives, as UTF-8.</summary>
    /// <param name="utf8Destination">Where to write.</param>
    /// <param name="bytesWritten">How many bytes were written; 0 when the answer is <see langword="false"/>.</param>
    /// <returns>Whether there was room.</returns>
    public bool TryFormatTagUri(Span<byte> utf8Destination, out int bytesWritten) =>
        TryFormatTagUri(_bits, utf8Destination, out bytesWritten);

    /// <summary>Reads a tag URI without control fields.</summary>
    /// <param name="uri">The URI.</param>
    /// <returns>The fields.</returns>
    /// <exception cref="FormatException">The URI breaks a rule; the message says which, and where.</exception>
    public static EpcFields ParseTagUri(ReadOnlySpan<char> uri) =>
        TryParseTagUri(uri, out EpcFields fields, out EpcFault fault) ? fields : throw new FormatException(fault.ToString());

    /// <summary>Reads a tag URI without control fields, without an exception.</summary>
    /// <param name="uri">The URI: at most 512 characters.</param>
    /// <param name="fields">The fields, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken and where, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the URI is valid and its scheme can hold the values.</returns>
    public static bool TryParseTagUri(ReadOnlySpan<char> uri, out EpcFields fields, out EpcFault fault)
    {
        Span<byte> room = stackalloc byte[MaxUriLength];
        fields = default;
        return AsciiText.TryNarrow(uri, room, out ReadOnlySpan<byte> bytes, out fault)
            && TryParseTagUri(bytes, out fields, out fault);
    }

    /// <summary>Reads a tag URI without control fields from UTF-8 text, without an exception.</summary>
    /// <param name="utf8Uri">The URI: at most 512 bytes.</param>
    /// <param name="fields">The fields, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken and where, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the URI is valid and its scheme can hold the values.</returns>
    public static bool TryParseTagUri(ReadOnlySpan<byte> utf8Uri, out EpcFields fields, out EpcFault fault)
    {
        fault = default;
        IdentityBits bits = default;
        Span<ulong> words = stackalloc ulong[Bits.Words];
        bool valid = TagUri.TryRead(utf8Uri, ref bits, words, out _, ref fault);
        fields = valid ? new EpcFields(bits) : default;
        return valid;
    }

    internal static bool TryFormatTagUri(in IdentityBits bits, Span<byte> destination, out int written)
    {
        if (destination.Length >= TextSink.Room)
        {
            written = WriteTagUri(bits, destination);
            return true;
        }

        Span<byte> room = stackalloc byte[TextSink.Room];
        return AsciiText.TryCopy(room.Slice(0, WriteTagUri(bits, room)), destination, out written);
    }

    internal static int WriteTagUri(in IdentityBits bits, Span<byte> room)
    {
        var sink = new TextSink(room);
        EpcCodec? codec = SchemeList.Of(bits.Scheme);
        if (codec is not null)
        {
            TagUri.Write(codec, bits, ref sink);
        }

        return sink.Length;
    }
}
