using System;
using ToolLedger.Identifiers.Schemes;

namespace ToolLedger.Identifiers;

/// <content>Pure identity and class URIs.</content>
public readonly partial struct EpcIdentity
{
    /// <summary>The longest URI that is read: 512 characters.</summary>
    public const int MaxUriLength = 512;

    /// <summary>The pure identity URI <c>urn:epc:id:...</c>; for a lot the class URI <c>urn:epc:class:lgtin:...</c>.</summary>
    /// <returns>The URI; empty text for the default value.</returns>
    public string ToUri()
    {
        Span<byte> room = stackalloc byte[TextSink.Room];
        return AsciiText.ToText(room.Slice(0, WriteUri(room)));
    }

    /// <summary>Writes what <see cref="ToUri"/> gives.</summary>
    /// <param name="destination">Where to write.</param>
    /// <param name="charsWritten">How many characters were written; 0 when the answer is <see langword="false"/>.</param>
    /// <returns>Whether there was room.</returns>
    public bool TryFormatUri(Span<char> destination, out int charsWritten)
    {
        Span<byte> room = stackalloc byte[TextSink.Room];
        return AsciiText.TryWiden(room.Slice(0, WriteUri(room)), destination, out charsWritten);
    }

    /// <summary>Writes what <see cref="ToUri"/> gives, as UTF-8.</summary>
    /// <param name="utf8Destination">Where to write.</param>
    /// <param name="bytesWritten">How many bytes were written; 0 when the answer is <see langword="false"/>.</param>
    /// <returns>Whether there was room.</returns>
    public bool TryFormatUri(Span<byte> utf8Destination, out int bytesWritten)
    {
        Span<byte> room = stackalloc byte[TextSink.Room];
        return AsciiText.TryCopy(room.Slice(0, WriteUri(room)), utf8Destination, out bytesWritten);
    }

    /// <summary>Reads a pure identity URI or a class URI.</summary>
    /// <param name="uri">The URI.</param>
    /// <returns>The identity.</returns>
    /// <exception cref="FormatException">The URI breaks a rule; the message says which, and where.</exception>
    public static EpcIdentity ParseUri(ReadOnlySpan<char> uri) =>
        TryParseUri(uri, out EpcIdentity identity, out EpcFault fault) ? identity : throw new FormatException(fault.ToString());

    /// <summary>Reads a pure identity URI or a class URI, without an exception.</summary>
    /// <param name="uri">The URI: at most 512 characters.</param>
    /// <param name="identity">The identity, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken and where, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the URI is valid.</returns>
    public static bool TryParseUri(ReadOnlySpan<char> uri, out EpcIdentity identity, out EpcFault fault)
    {
        Span<byte> room = stackalloc byte[MaxUriLength];
        identity = default;
        return AsciiText.TryNarrow(uri, room, out ReadOnlySpan<byte> bytes, out fault) && TryParseUri(bytes, out identity, out fault);
    }

    /// <summary>Reads a pure identity URI or a class URI from UTF-8 text, without an exception.</summary>
    /// <param name="utf8Uri">The URI: at most 512 bytes.</param>
    /// <param name="identity">The identity, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken and where, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the URI is valid.</returns>
    public static bool TryParseUri(ReadOnlySpan<byte> utf8Uri, out EpcIdentity identity, out EpcFault fault)
    {
        identity = default;
        fault = default;
        if (utf8Uri.Length > MaxUriLength)
        {
            fault = new EpcFault(EpcRule.TextLength, EpcField.None, EpcPositionUnit.Character, MaxUriLength, (ulong)utf8Uri.Length);
            return false;
        }

        IdentityBits bits = default;
        if (!PureIdentityUri.TryRead(utf8Uri, ref bits, ref fault))
        {
            return false;
        }

        identity = new EpcIdentity(bits);
        return true;
    }

    private int WriteUri(Span<byte> room)
    {
        var sink = new TextSink(room);
        if (KindList.Has(_bits.Kind))
        {
            PureIdentityUri.Write(_bits, ref sink);
        }

        return sink.Length;
    }
}
