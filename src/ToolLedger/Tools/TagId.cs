using System;
using System.Diagnostics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using ToolLedger.Identifiers;
using ToolLedger.Records;

namespace ToolLedger.Tools;

/// <summary>The identity a tag answers with, whatever kind of tag it is: the key of tags everywhere.</summary>
/// <remarks>
/// Two tag ids are equal when kind and bits (or text, ordinally) are equal. An EPC is kept as the tag answers, its bits
/// padded with zeros to whole 16-bit words, because a Gen2 tag cannot answer with part of a word. Order: by kind, then
/// EPC order, number, or ordinal text. The default value is an EPC of no bits. Immutable and thread-safe.
/// </remarks>
[StructLayout(LayoutKind.Auto)]
public readonly partial struct TagId : IEquatable<TagId>, IComparable<TagId>, IComparable
{
    // The EPC, or the 64 bits of a numbered identity: together with the kind they are compared alike.
    private readonly Epc _bits;
    private readonly string? _text;
    private readonly TagIdKind _kind;

    // Eight words of 16 bits need four bits; the kind stands above them.
    private const int ShortKindShift = 4;

    private TagId(TagIdKind kind, Epc bits, string? text)
    {
        _kind = kind;
        _bits = bits;
        _text = text;
    }

    /// <summary>The kind of identity.</summary>
    public TagIdKind Kind => _kind;

    /// <summary>The EPC in whole words; empty unless <see cref="Kind"/> is <see cref="TagIdKind.Epc"/>.</summary>
    public Epc Epc => _kind == TagIdKind.Epc ? _bits : default;

    /// <summary>The 64-bit code of an ISO 11784 or ISO/IEC 15693 identity; 0 for other kinds.</summary>
    public ulong Number => _kind is TagIdKind.Iso11784 or TagIdKind.Iso15693 ? NumberOf(_bits) : 0;

    /// <summary>The text of a <see cref="TagIdKind.Text"/> identity; an empty string for other kinds.</summary>
    public string Text => _text ?? "";

    /// <summary>True for an EPC of no bits, such as the default value.</summary>
    public bool IsEmpty => _kind == TagIdKind.Epc && _bits.IsEmpty;

    /// <summary>The identity of a Gen2 tag.</summary>
    /// <param name="epc">The EPC as reported; padded with zeros to whole words.</param>
    /// <returns>The tag id.</returns>
    public static TagId FromEpc(Epc epc) => new(TagIdKind.Epc, epc.ToWholeWords(), null);

    /// <summary>The identity of an ISO 11784 transponder.</summary>
    /// <param name="code">Its 64-bit code, first bit highest.</param>
    /// <returns>The tag id.</returns>
    public static TagId FromIso11784(ulong code) => new(TagIdKind.Iso11784, BitsOf(code), null);

    /// <summary>The identity of an ISO/IEC 15693 card.</summary>
    /// <param name="uniqueIdentifier">Its 64-bit unique identifier, most significant byte (E0) highest.</param>
    /// <returns>The tag id.</returns>
    public static TagId FromIso15693(ulong uniqueIdentifier) => new(TagIdKind.Iso15693, BitsOf(uniqueIdentifier), null);

    /// <summary>Any other identity.</summary>
    /// <param name="text">1 to 64 printable characters without leading or trailing white space.</param>
    /// <returns>The tag id.</returns>
    /// <exception cref="ArgumentException">The text breaks that rule; the message says how.</exception>
    public static TagId FromText(string text) => new(TagIdKind.Text, default, IdText.Require(text, nameof(text)));

    /// <summary>Compares two tag ids.</summary>
    /// <param name="left">One tag id.</param>
    /// <param name="right">The other tag id.</param>
    /// <returns>True if they are equal.</returns>
    public static bool operator ==(TagId left, TagId right) => left.Equals(right);

    /// <summary>Compares two tag ids.</summary>
    /// <param name="left">One tag id.</param>
    /// <param name="right">The other tag id.</param>
    /// <returns>True if they differ.</returns>
    public static bool operator !=(TagId left, TagId right) => !left.Equals(right);

    /// <summary>Compares two tag ids by their order.</summary>
    /// <param name="left">One tag id.</param>
    /// <param name="right">The other tag id.</param>
    /// <returns>True if the first comes before the second.</returns>
    public static bool operator <(TagId left, TagId right) => left.CompareTo(right) < 0;

    /// <summary>Compares two tag ids by their order.</summary>
    /// <param name="left">One tag id.</param>
    /// <param name="right">The other tag id.</param>
    /// <returns>True if the first comes after the second.</returns>
    public static bool operator >(TagId left, TagId right) => left.CompareTo(right) > 0;

    /// <summary>Compares two tag ids by their order.</summary>
    /// <param name="left">One tag id.</param>
    /// <param name="right">The other tag id.</param>
    /// <returns>True if the first does not come after the second.</returns>
    public static bool operator <=(TagId left, TagId right) => left.CompareTo(right) <= 0;

    /// <summary>Compares two tag ids by their order.</summary>
    /// <param name="left">One tag id.</param>
    /// <param name="right">The other tag id.</param>
    /// <returns>True if the first does not come before the second.</returns>
    public static bool operator >=(TagId left, TagId right) => left.CompareTo(right) >= 0;

    /// <inheritdoc/>
    public bool Equals(TagId other) => _kind == other._kind && _bits.Equals(other._bits)
        && string.Equals(_text, other._text, StringComparison.Ordinal);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is TagId other && Equals(other);

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public override int GetHashCode() =>
        _text is null ? _bits.GetHashCode() ^ (int)_kind : _text.GetHashCode(StringComparison.Ordinal);

    /// <inheritdoc/>
    public int CompareTo(TagId other)
    {
        // As bytes: comparing enum values boxes both.
        int order = ((byte)_kind).CompareTo((byte)other._kind);
        if (order != 0)
        {
            return order;
        }

        return _text is null ? _bits.CompareTo(other._bits) : string.CompareOrdinal(_text, other._text);
    }

    /// <inheritdoc/>
    public int CompareTo(object? obj) => obj switch
    {
        null => 1,
        TagId other => CompareTo(other),
        _ => throw new ArgumentException("Only tag ids can be compared with a tag id.", nameof(obj)),
    };

    /// <summary>The identity in 17 bytes, where it fits: no text, and at most 128 bits.</summary>
    /// <param name="first">The first 64 bits.</param>
    /// <param name="second">The next 64 bits.</param>
    /// <param name="form">Kind and bit count together.</param>
    /// <returns>Whether it fits.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal bool TryGetShort(out ulong first, out ulong second, out byte form)
    {
        form = (byte)(((int)_kind << ShortKindShift) | (_bits.BitCount >> 4));
        return _bits.TryGetWords(out first, out second) && _text is null;
    }

    /// <summary>The identity of a Gen2 tag of at most eight 16-bit words, given as two words of 64 bits.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static TagId FromWords(ulong first, ulong second, int bitCount)
    {
        Debug.Assert(bitCount % 16 == 0, "Trusted: a tag answers in whole words.");
        return new TagId(TagIdKind.Epc, Epc.FromWords(first, second, bitCount), null);
    }

    /// <summary>The identity that <see cref="TryGetShort"/> took apart.</summary>
    internal static TagId FromShort(ulong first, ulong second, byte form) => new(
        (TagIdKind)(form >> ShortKindShift), Epc.FromWords(first, second, (form & ((1 << ShortKindShift) - 1)) << 4), null);

    private static Epc BitsOf(ulong number) => Epc.FromWords(number, 0, 8 * sizeof(ulong));

    private static ulong NumberOf(Epc bits)
    {
        bits.TryGetWords(out ulong number, out _);
        return number;
    }
}
