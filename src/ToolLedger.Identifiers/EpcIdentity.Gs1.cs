using System;
using ToolLedger.Identifiers.Schemes;

namespace ToolLedger.Identifiers;

/// <content>GS1 element strings, element lists and Digital Links.</content>
public readonly partial struct EpcIdentity
{
    /// <summary>The longest element string or Digital Link that is read: 2,048 characters.</summary>
    public const int MaxGs1Length = ElementReader.Room;

    /// <summary>Reads an element string, with application identifiers in brackets or as a scanner transmits it.</summary>
    /// <param name="text">The element string: at most 2,048 characters.</param>
    /// <param name="companyPrefixLength">How the length of the company prefix is found.</param>
    /// <param name="decoding">What is asked beyond the form.</param>
    /// <param name="identity">The identity, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken and where, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the text holds a key with its serial number.</returns>
    public static bool TryParseElementString(
        ReadOnlySpan<char> text,
        CompanyPrefixLength companyPrefixLength,
        EpcDecoding decoding,
        out EpcIdentity identity,
        out EpcFault fault)
    {
        Span<byte> room = stackalloc byte[MaxGs1Length];
        identity = default;
        return AsciiText.TryNarrow(text, room, out ReadOnlySpan<byte> bytes, out fault)
            && TryParseElementString(bytes, companyPrefixLength, decoding, out identity, out fault);
    }

    /// <summary>Reads an element string from UTF-8 text, with application identifiers in brackets or as a scanner
    /// transmits it.</summary>
    /// <param name="utf8Text">The element string: at most 2,048 bytes.</param>
    /// <param name="companyPrefixLength">How the length of the company prefix is found.</param>
    /// <param name="decoding">What is asked beyond the form.</param>
    /// <param name="identity">The identity, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken and where, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the text holds a key with its serial number.</returns>
    public static bool TryParseElementString(
        ReadOnlySpan<byte> utf8Text,
        CompanyPrefixLength companyPrefixLength,
        EpcDecoding decoding,
        out EpcIdentity identity,
        out EpcFault fault)
    {
        fault = default;
        identity = default;
        Span<byte> plain = stackalloc byte[ElementReader.Room];
        Span<ElementSlot> slots = stackalloc ElementSlot[Ai.MaximumElements];
        var elements = new ElementReader(slots, plain);
        return FitsRoom(utf8Text, ref fault)
            && elements.TryReadElementString(utf8Text, ref fault)
            && TryResolve(ref elements, companyPrefixLength, decoding, out identity, ref fault);
    }

    /// <summary>Reads a GS1 Digital Link, escaped more or less than necessary, with any host and stem.</summary>
    /// <param name="uri">The URI: at most 2,048 characters. Compressed forms are not read.</param>
    /// <param name="companyPrefixLength">How the length of the company prefix is found.</param>
    /// <param name="decoding">What is asked beyond the form.</param>
    /// <param name="identity">The identity, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken and where, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the URI holds a key with its serial number.</returns>
    public static bool TryParseDigitalLink(
        ReadOnlySpan<char> uri,
        CompanyPrefixLength companyPrefixLength,
        EpcDecoding decoding,
        out EpcIdentity identity,
        out EpcFault fault)
    {
        Span<byte> room = stackalloc byte[MaxGs1Length];
        identity = default;
        return AsciiText.TryNarrow(uri, room, out ReadOnlySpan<byte> bytes, out fault)
            && TryParseDigitalLink(bytes, companyPrefixLength, decoding, out identity, out fault);
    }

    /// <summary>Reads a GS1 Digital Link from UTF-8 text, escaped more or less than necessary, with any host and stem.</summary>
    /// <param name="utf8Uri">The URI: at most 2,048 bytes. Compressed forms are not read.</param>
    /// <param name="companyPrefixLength">How the length of the company prefix is found.</param>
    /// <param name="decoding">What is asked beyond the form.</param>
    /// <param name="identity">The identity, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken and where, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the URI holds a key with its serial number.</returns>
    public static bool TryParseDigitalLink(
        ReadOnlySpan<byte> utf8Uri,
        CompanyPrefixLength companyPrefixLength,
        EpcDecoding decoding,
        out EpcIdentity identity,
        out EpcFault fault)
    {
        fault = default;
        identity = default;
        Span<byte> plain = stackalloc byte[ElementReader.Room];
        Span<ElementSlot> slots = stackalloc ElementSlot[Ai.MaximumElements];
        var elements = new ElementReader(slots, plain);
        return FitsRoom(utf8Uri, ref fault)
            && DigitalLink.TryRead(utf8Uri, ref elements, ref fault)
            && TryResolve(ref elements, companyPrefixLength, decoding, out identity, ref fault);
    }

    /// <summary>Takes the identity out of a list of GS1 elements.</summary>
    /// <param name="elements">At most 24 elements.</param>
    /// <param name="companyPrefixLength">How the length of the company prefix is found.</param>
    /// <param name="decoding">What is asked beyond the form.</param>
    /// <param name="identity">The identity, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken, when the answer is <see langword="false"/>; its position counts characters
    /// of the values one behind the other.</param>
    /// <returns>Whether the list holds a key with its serial number.</returns>
    public static bool TryFromElements(
        ReadOnlySpan<Gs1Element> elements,
        CompanyPrefixLength companyPrefixLength,
        EpcDecoding decoding,
        out EpcIdentity identity,
        out EpcFault fault)
    {
        fault = default;
        identity = default;
        Span<byte> plain = stackalloc byte[ElementReader.Room + Ai.MaximumElements];
        Span<ElementSlot> slots = stackalloc ElementSlot[Ai.MaximumElements];
        var reader = new ElementReader(slots, plain);
        foreach (Gs1Element element in elements)
        {
            if (!reader.TryAddElement(element.ApplicationIdentifier, element.Value, ref fault))
            {
                return false;
            }
        }

        return TryResolve(ref reader, companyPrefixLength, decoding, out identity, ref fault);
    }

    /// <summary>The element string; empty text for a kind that has none.</summary>
    /// <param name="form">How it is written.</param>
    /// <returns>The text.</returns>
    public string ToElementString(ElementStringForm form = ElementStringForm.Bracketed)
    {
        Span<byte> room = stackalloc byte[TextSink.Room];
        var sink = new TextSink(room);
        ElementString.TryWrite(_bits, form, ref sink);
        return AsciiText.ToText(room.Slice(0, sink.Length));
    }

    /// <summary>Writes the element string as UTF-8.</summary>
    /// <param name="utf8Destination">Where to write.</param>
    /// <param name="form">How it is written.</param>
    /// <param name="bytesWritten">How many bytes were written; 0 when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the kind has an element string and there was room.</returns>
    public bool TryFormatElementString(Span<byte> utf8Destination, ElementStringForm form, out int bytesWritten)
    {
        Span<byte> room = stackalloc byte[TextSink.Room];
        var sink = new TextSink(room);
        bytesWritten = 0;
        return ElementString.TryWrite(_bits, form, ref sink)
            && AsciiText.TryCopy(room.Slice(0, sink.Length), utf8Destination, out bytesWritten);
    }

    /// <summary>The GS1 Digital Link in its canonical form; empty text for a kind that has none.</summary>
    /// <returns>The URI, with the stem <c>https://id.gs1.org</c>.</returns>
    public string ToDigitalLink() => ToDigitalLink(DigitalLink.DefaultStem);

    /// <summary>The GS1 Digital Link in its canonical form with a stem of the caller's; empty text for a kind that has none.</summary>
    /// <param name="stem">Scheme, host and path of the caller's resolver without a slash at the end: at most 256 ASCII
    /// characters.</param>
    /// <returns>The URI.</returns>
    /// <exception cref="ArgumentNullException">There is no stem.</exception>
    /// <exception cref="ArgumentException">The stem is too long or not ASCII.</exception>
    public string ToDigitalLink(string stem)
    {
        _ = stem ?? throw new ArgumentNullException(nameof(stem));
        Span<byte> start = stackalloc byte[256];
        if (!AsciiText.TryNarrow(stem.AsSpan(), start, out ReadOnlySpan<byte> bytes, out _) || bytes.IndexOf((byte)0xFF) >= 0)
        {
            throw new ArgumentException("A stem has at most 256 ASCII characters.", nameof(stem));
        }

        Span<byte> room = stackalloc byte[2 * TextSink.Room];
        var sink = new TextSink(room);
        DigitalLink.TryWrite(_bits, bytes, ref sink);
        return AsciiText.ToText(room.Slice(0, sink.Length));
    }

    /// <summary>Writes the GS1 Digital Link with the stem <c>https://id.gs1.org</c> as UTF-8.</summary>
    /// <param name="utf8Destination">Where to write.</param>
    /// <param name="bytesWritten">How many bytes were written; 0 when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the kind has a Digital Link and there was room.</returns>
    public bool TryFormatDigitalLink(Span<byte> utf8Destination, out int bytesWritten)
    {
        Span<byte> room = stackalloc byte[TextSink.Room];
        var sink = new TextSink(room);
        bytesWritten = 0;
        return DigitalLink.TryWrite(_bits, "https://id.gs1.org"u8, ref sink)
            && AsciiText.TryCopy(room.Slice(0, sink.Length), utf8Destination, out bytesWritten);
    }

    /// <summary>The GS1 elements: the key, and the serial number where another application identifier holds it.</summary>
    /// <returns>One or two elements; none for a kind outside the GS1 keys.</returns>
    public Gs1Element[] ToElements()
    {
        Gs1Key? key = KindList.Has(_bits.Kind) ? KindList.Of(_bits.Kind).Gs1 : null;
        if (key is null)
        {
            return [];
        }

        Span<byte> room = stackalloc byte[TextSink.Room];
        var sink = new TextSink(room);
        Gs1Text.WriteKey(key, _bits, ref sink);
        var first = new Gs1Element(AiText(key.Ai), AsciiText.ToText(room.Slice(0, sink.Length)));
        return Gs1Text.HasQualifier(key, _bits)
            ? [first, new Gs1Element(AiText(key.QualifierAi), _bits.C.ToString())]
            : [first];
    }

    private static string AiText(int ai)
    {
        Span<byte> room = stackalloc byte[16];
        var sink = new TextSink(room);
        Ai.Write(ai, ref sink);
        return AsciiText.ToText(room.Slice(0, sink.Length));
    }

    private static bool FitsRoom(ReadOnlySpan<byte> text, ref EpcFault fault)
    {
        if (text.Length <= MaxGs1Length)
        {
            return true;
        }

        fault = new EpcFault(EpcRule.TextLength, EpcField.None, EpcPositionUnit.Character, MaxGs1Length, (ulong)text.Length);
        return false;
    }

    private static bool TryResolve(
        ref ElementReader elements,
        CompanyPrefixLength length,
        EpcDecoding decoding,
        out EpcIdentity identity,
        ref EpcFault fault)
    {
        IdentityBits bits = default;
        bool resolved = Gs1Text.TryResolve(ref elements, length, decoding, ref bits, ref fault);
        identity = resolved ? new EpcIdentity(bits) : default;
        return resolved;
    }
}
