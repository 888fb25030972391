using System;
using System.Buffers.Binary;
using System.Text;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>One binary coding scheme: bits to components and back.</summary>
internal abstract class EpcCodec
{
    private protected EpcCodec(EpcScheme scheme, byte header, string name, EpcKind kind, int filterBits, int minimumBits, int maximumBits)
    {
        Scheme = scheme;
        Header = header;
        Name = name;
        Kind = kind;
        FilterBits = filterBits;
        MinimumBits = minimumBits;
        MaximumBits = maximumBits;
        Grammar = KindList.Of(kind);
        UriStart = Encoding.ASCII.GetBytes("urn:epc:tag:" + name + ":");
        NameKey = FirstEight(Encoding.ASCII.GetBytes(name + ":\0\0\0\0\0\0\0\0"));
    }

    internal EpcScheme Scheme { get; }

    internal byte Header { get; }

    /// <summary>The name in tag URIs, such as <c>sgtin-96</c>.</summary>
    internal string Name { get; }

    /// <summary>The name as the standard prints it, such as <c>SGTIN-96</c> and <c>ADI-var</c>.</summary>
    internal string PrintedName => Name.EndsWith("-var", StringComparison.Ordinal)
        ? Name.Substring(0, Name.Length - 4).ToUpperInvariant() + "-var"
        : Name.ToUpperInvariant();

    internal EpcKind Kind { get; }

    internal KindGrammar Grammar { get; }

    /// <summary>The bits of the filter value, which stand behind the header; 0 where there is none.</summary>
    internal int FilterBits { get; }

    internal int MinimumBits { get; }

    internal int MaximumBits { get; }

    /// <summary>The first eight bytes of the name and its colon.</summary>
    internal ulong NameKey { get; }

    /// <summary>The beginning of the tag URI without control fields.</summary>
    internal byte[] UriStart { get; }

    /// <summary>The first eight bytes of a name with its colon; the shortest have seven, and what follows them does not count.</summary>
    internal static ulong FirstEight(ReadOnlySpan<byte> text) =>
        BinaryPrimitives.ReadUInt64LittleEndian(text) & (text[6] == ':' ? 0x00FFFFFFFFFFFFFFUL : ulong.MaxValue);

    /// <summary>Reads the components. There are at least <see cref="MinimumBits"/> bits, and the header is this scheme's.</summary>
    internal abstract bool TryDecode(
        ReadOnlySpan<ulong> words, int bitCount, ref IdentityBits bits, out int used, ref EpcFault fault);

    /// <summary>Writes all bits, header and filter included, into zeroed words. The components fit their kind, not
    /// necessarily this scheme.</summary>
    internal abstract bool TryEncode(in IdentityBits bits, Span<ulong> words, out int used, ref EpcFault fault);

    /// <summary>Writes the bits of a tag URI without its careful reading, where the codec can: the components from a position on.
    /// No is not an answer and leaves the words in any state: the careful way follows and says what is wrong, if anything is.</summary>
    internal virtual bool TryEncodeAtOnce(ReadOnlySpan<byte> text, int position, uint filter, Span<ulong> words, out int used)
    {
        used = 0;
        return false;
    }

    /// <summary>The rule of a component in a tag pattern, where the scheme is narrower than the kind.</summary>
    internal virtual ComponentRule PatternRule(ComponentRule rule, int prefixLength) => rule;

    /// <summary>Tells a listener the position, width and meaning of every field of bits that decode.</summary>
    internal abstract void Describe(ReadOnlySpan<ulong> words, int used, FieldListener listener);

    private protected static bool Fail(EpcRule rule, EpcField field, int position, ulong found, ref EpcFault fault)
    {
        fault = new EpcFault(rule, field, EpcPositionUnit.Bit, position, found);
        return false;
    }

    private protected static bool FailEncode(EpcRule rule, EpcField field, ulong found, ref EpcFault fault)
    {
        fault = new EpcFault(rule, field, EpcPositionUnit.None, 0, found);
        return false;
    }
}
