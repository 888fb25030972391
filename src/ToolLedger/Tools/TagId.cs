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
    // The first 128 bits of the EPC, or the 64 bits of a numbered identity: together with the form they are compared alike.
    private readonly ulong _first;
    private readonly ulong _second;

    // What these do not hold: the text, or a LongEpc.
    private readonly object? _more;

    // The kind stands above the number of 16-bit words, at most eight of which are held here.
    private readonly byte _form;

    private static readonly ulong KeyA = Key(1);
    private static readonly ulong KeyB = Key(2);

    private const int KindShift = 4;
    private const int WordsMask = (1 << KindShift) - 1;
    private const int MoreWords = WordsMask;
    private const int NumberWords = 4;

    private TagId(TagIdKind kind, int words, ulong first, ulong second, object? more)
    {
        _form = (byte)(((int)kind << KindShift) | words);
        _first = first;
        _second = second;
        _more = more;
    }

    /// <summary>The kind of identity.</summary>
    public TagIdKind Kind => (TagIdKind)(_form >> KindShift);

    /// <summary>The EPC in whole words; empty unless <see cref="Kind"/> is <see cref="TagIdKind.Epc"/>.</summary>
    public Epc Epc => Kind == TagIdKind.Epc ? Bits : default;

    /// <summary>The 64-bit code of an ISO 11784 or ISO/IEC 15693 identity; 0 for other kinds.</summary>
    public ulong Number => Kind is TagIdKind.Iso11784 or TagIdKind.Iso15693 ? _first : 0;

    /// <summary>The text of a <see cref="TagIdKind.Text"/> identity; an empty string for other kinds.</summary>
    public string Text => _more as string ?? "";

    /// <summary>True for an EPC of no bits, such as the default value.</summary>
    public bool IsEmpty => _form == 0;

    private Epc Bits => _more is LongEpc more ? more.Bits : Epc.FromWords(_first, _second, BitCount);

    private int BitCount => (_form & WordsMask) << 4;

    /// <summary>The identity of a Gen2 tag.</summary>
    /// <param name="epc">The EPC as reported; padded with zeros to whole words.</param>
    /// <returns>The tag id.</returns>
    public static TagId FromEpc(Epc epc)
    {
        Epc whole = epc.ToWholeWords();
        return whole.TryGetWords(out ulong first, out ulong second)
            ? new TagId(TagIdKind.Epc, whole.BitCount >> 4, first, second, null)
            : new TagId(TagIdKind.Epc, MoreWords, first, second, new LongEpc(whole));
    }

    /// <summary>The identity of an ISO 11784 transponder.</summary>
    /// <param name="code">Its 64-bit code, first bit highest.</param>
    /// <returns>The tag id.</returns>
    public static TagId FromIso11784(ulong code) => new(TagIdKind.Iso11784, NumberWords, code, 0, null);

    /// <summary>The identity of an ISO/IEC 15693 card.</summary>
    /// <param name="uniqueIdentifier">Its 64-bit unique identifier, most significant byte (E0) highest.</param>
    /// <returns>The tag id.</returns>
    public static TagId FromIso15693(ulong uniqueIdentifier) => new(TagIdKind.Iso15693, NumberWords, uniqueIdentifier, 0, null);

    /// <summary>Any other identity.</summary>
    /// <param name="text">1 to 64 printable characters without leading or trailing white space.</param>
    /// <returns>The tag id.</returns>
    /// <exception cref="ArgumentException">The text breaks that rule; the message says how.</exception>
    public static TagId FromText(string text) => new(TagIdKind.Text, MoreWords, 0, 0, IdText.Require(text, nameof(text)));

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
    public bool Equals(TagId other) => _first == other._first && _second == other._second && _form == other._form
        && (ReferenceEquals(_more, other._more) || Equals(_more, other._more));

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is TagId other && Equals(other);

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public override int GetHashCode() => _more is null ? HashOfShort(_first, _second, _form) : HashOfMore();

    /// <inheritdoc/>
    public int CompareTo(TagId other)
    {
        int order = (_form >> KindShift).CompareTo(other._form >> KindShift);
        if (order != 0)
        {
            return order;
        }

        if (_more is string text)
        {
            return string.CompareOrdinal(text, other.Text);
        }

        if (_more is not null || other._more is not null)
        {
            return Bits.CompareTo(other.Bits);
        }

        order = _first.CompareTo(other._first);
        order = order != 0 ? order : _second.CompareTo(other._second);
        return order != 0 ? order : _form.CompareTo(other._form);
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
        first = _first;
        second = _second;
        form = _form;
        return _more is null;
    }

    /// <summary>The identity of a Gen2 tag of at most eight 16-bit words, given as two words of 64 bits.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static TagId FromWords(ulong first, ulong second, int bitCount)
    {
        Debug.Assert(bitCount % 16 == 0, "Trusted: a tag answers in whole words.");
        Epc.FromWords(first, second, bitCount).TryGetWords(out first, out second);
        return new TagId(TagIdKind.Epc, bitCount >> 4, first, second, null);
    }

    /// <summary>The identity that <see cref="TryGetShort"/> took apart.</summary>
    internal static TagId FromShort(ulong first, ulong second, byte form) => new((TagIdKind)(form >> KindShift), form & WordsMask, first, second, null);

    /// <summary>The hash code of the identity that <see cref="TryGetShort"/> took apart.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static int HashOfShort(ulong first, ulong second, byte form)
    {
        ulong upper = Math.BigMul(first ^ KeyA, second ^ KeyB ^ form, out ulong lower);
        return (int)(upper ^ lower);
    }

    private int HashOfMore() => _more is string text ? text.GetHashCode(StringComparison.Ordinal) : Bits.GetHashCode();

    // HashCode is seeded by the runtime for each process, so that crafted tags cannot be made to collide.
    private static ulong Key(int number) => ((ulong)(uint)HashCode.Combine(number) << 32) | (uint)HashCode.Combine(number, number);

    private sealed record LongEpc(Epc Bits);
}
