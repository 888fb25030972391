using System;
using ToolLedger.Identifiers.Schemes;

namespace ToolLedger.Identifiers;

/// <summary>
/// A set of EPCs written as a URI with asterisks and ranges: tag patterns <c>urn:epc:pat:...</c> (GS1 TDS 2.3, chapter 13) and
/// pure identity patterns <c>urn:epc:idpat:...</c>.
/// </summary>
/// <remarks>Immutable, and therefore safe for use by any number of threads.</remarks>
public sealed class EpcPattern : IEquatable<EpcPattern>
{
    private readonly EpcCodec? _codec;
    private readonly KindGrammar _grammar;
    private readonly PatternComponent _filter;
    private readonly PatternComponent[] _components;

    private EpcPattern(EpcCodec? codec, KindGrammar grammar, PatternComponent filter, PatternComponent[] components)
    {
        _codec = codec;
        _grammar = grammar;
        _filter = filter;
        _components = components;
    }

    /// <summary>The coding scheme of a tag pattern; <see cref="EpcScheme.Unknown"/> for a pure identity pattern.</summary>
    public EpcScheme Scheme => _codec?.Scheme ?? EpcScheme.Unknown;

    /// <summary>The kind of identity.</summary>
    public EpcKind Kind => _grammar.Kind;

    /// <summary>Reads a pattern.</summary>
    /// <param name="uri">The URI: at most 512 characters.</param>
    /// <returns>The pattern.</returns>
    /// <exception cref="FormatException">The URI breaks a rule; the message says which, and where.</exception>
    public static EpcPattern Parse(ReadOnlySpan<char> uri) =>
        TryParse(uri, out EpcPattern? pattern, out EpcFault fault) ? pattern! : throw new FormatException(fault.ToString());

    /// <summary>Reads a pattern, without an exception.</summary>
    /// <param name="uri">The URI: at most 512 characters.</param>
    /// <param name="pattern">The pattern, or <see langword="null"/> when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken and where, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the URI is a valid pattern.</returns>
    public static bool TryParse(ReadOnlySpan<char> uri, out EpcPattern? pattern, out EpcFault fault)
    {
        pattern = null;
        Span<byte> room = stackalloc byte[EpcFields.MaxUriLength];
        if (!AsciiText.TryNarrow(uri, room, out ReadOnlySpan<byte> text, out fault))
        {
            return false;
        }

        var reader = new PatternReader(text);
        if (!reader.TryReadStart(out EpcCodec? codec, out KindGrammar? grammar, ref fault))
        {
            return false;
        }

        PatternComponent filter = default;
        var components = new PatternComponent[grammar!.Components.Length];
        if (codec is { FilterBits: > 0 } && !reader.TryReadFilter(codec.FilterBits, out filter, ref fault))
        {
            return false;
        }

        if (!reader.TryReadComponents(codec, grammar, components, ref fault))
        {
            return false;
        }

        pattern = new EpcPattern(codec, grammar, filter, components);
        return true;
    }

    /// <summary>Whether an EPC is in the set. Bits that cannot be decoded are in none.</summary>
    /// <param name="epc">The EPC.</param>
    /// <returns>The answer.</returns>
    public bool Matches(Epc epc) => EpcFields.TryDecode(epc, out EpcFields fields) && Matches(fields);

    /// <summary>Whether an EPC is in the set.</summary>
    /// <param name="fields">The fields of the EPC.</param>
    /// <returns>The answer.</returns>
    public bool Matches(in EpcFields fields) => _codec is null
        ? Matches(fields.Identity)
        : fields.Scheme == _codec.Scheme
            && (_codec.FilterBits == 0 || _filter.Matches(new EpcComponent((ulong)fields.Filter, 1 + (fields.Filter / 10 > 0 ? 1 : 0))))
            && MatchesComponents(fields.Identity);

    /// <summary>Whether an identity is in the set of a pure identity pattern. A tag pattern also asks for scheme and filter and
    /// holds no bare identity.</summary>
    /// <param name="identity">The identity.</param>
    /// <returns>The answer.</returns>
    public bool Matches(in EpcIdentity identity) =>
        _codec is null && identity.Kind == _grammar.Kind && MatchesComponents(identity);

    /// <summary>Whether both are written alike.</summary>
    /// <param name="other">The other pattern.</param>
    /// <returns>The answer.</returns>
    public bool Equals(EpcPattern? other) =>
        other is not null && _codec == other._codec && _grammar == other._grammar && _filter.Equals(other._filter)
        && _components.AsSpan().SequenceEqual(other._components);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as EpcPattern);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        int hash = (int)Kind ^ ((int)Scheme << 8) ^ _filter.GetHashCode();
        foreach (PatternComponent component in _components)
        {
            hash = (hash * 31) + component.GetHashCode();
        }

        return hash;
    }

    /// <summary>The URI.</summary>
    /// <returns>The URI in its canonical form.</returns>
    public override string ToString()
    {
        Span<byte> room = stackalloc byte[TextSink.Room];
        var sink = new TextSink(room);
        sink.Add(_codec is null ? "urn:epc:idpat:"u8 : "urn:epc:pat:"u8);
        sink.Add(_codec is null
            ? _grammar.UriStart.AsSpan("urn:epc:id:".Length)
            : _codec.UriStart.AsSpan("urn:epc:tag:".Length));
        if (_codec is { FilterBits: > 0 })
        {
            _filter.Write(ref sink);
            sink.Add((byte)'.');
        }

        for (int i = 0; i < _components.Length; i++)
        {
            if (i > 0)
            {
                sink.Add((byte)'.');
            }

            _components[i].Write(ref sink);
        }

        return AsciiText.ToText(room.Slice(0, sink.Length));
    }

    private bool MatchesComponents(in EpcIdentity identity)
    {
        IdentityBits bits = identity.Contents;
        for (int i = 0; i < _components.Length; i++)
        {
            if (!_components[i].Matches(bits.Get(_grammar.Components[i].Slot)))
            {
                return false;
            }
        }

        return true;
    }
}
