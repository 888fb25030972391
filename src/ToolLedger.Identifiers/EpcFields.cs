using System;
using ToolLedger.Identifiers.Schemes;

namespace ToolLedger.Identifiers;

/// <summary>The decoded fields of an EPC: coding scheme, filter value and identity.</summary>
/// <remarks>
/// The default value has scheme <see cref="EpcScheme.Unknown"/> and no identity. Immutable, and therefore safe for use by any
/// number of threads.
/// </remarks>
public readonly partial struct EpcFields : IEquatable<EpcFields>
{
    private readonly IdentityBits _bits;

    // Trusted: the components fit the scheme.
    internal EpcFields(in IdentityBits bits) => _bits = bits;

    /// <summary>The coding scheme.</summary>
    public EpcScheme Scheme => _bits.Scheme;

    /// <summary>The filter value: 0 to 7, for USDoD 0 to 15, for ADI 0 to 63; 0 for GID, which has none.</summary>
    public int Filter => _bits.Filter;

    /// <summary>What is identified.</summary>
    public EpcIdentity Identity => new(_bits);

    /// <summary>Whether both have the same scheme, filter value and identity.</summary>
    /// <param name="other">The other fields.</param>
    /// <returns>The answer.</returns>
    public bool Equals(EpcFields other) =>
        _bits.Scheme == other._bits.Scheme && _bits.Filter == other._bits.Filter && Identity == other.Identity;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is EpcFields other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => Identity.GetHashCode() ^ ((int)_bits.Scheme << 8) ^ _bits.Filter;

    /// <summary>The tag URI.</summary>
    /// <returns>The URI; empty text for the default value.</returns>
    public override string ToString() => ToTagUri();

    /// <summary>Whether both have the same scheme, filter value and identity.</summary>
    /// <param name="left">One value.</param>
    /// <param name="right">The other value.</param>
    /// <returns>The answer.</returns>
    public static bool operator ==(EpcFields left, EpcFields right) => left.Equals(right);

    /// <summary>Whether scheme, filter value or identity differ.</summary>
    /// <param name="left">One value.</param>
    /// <param name="right">The other value.</param>
    /// <returns>The answer.</returns>
    public static bool operator !=(EpcFields left, EpcFields right) => !left.Equals(right);

    /// <summary>Puts scheme, filter value and identity together.</summary>
    /// <param name="identity">The identity.</param>
    /// <param name="scheme">A scheme that codes this kind of identity.</param>
    /// <param name="filter">The filter value; 0 for GID.</param>
    /// <param name="fields">The fields, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the scheme can hold them.</returns>
    public static bool TryCreate(
        in EpcIdentity identity, EpcScheme scheme, int filter, out EpcFields fields, out EpcFault fault)
    {
        fields = default;
        fault = default;
        EpcCodec? codec = SchemeList.Of(scheme);
        if (codec is null || codec.Kind != identity.Kind)
        {
            fault = new EpcFault(EpcRule.SchemeFitsKind, EpcField.Scheme, EpcPositionUnit.None, 0, (ulong)identity.Kind);
            return false;
        }

        if (filter < 0 || filter >> codec.FilterBits != 0)
        {
            fault = new EpcFault(EpcRule.FilterRange, EpcField.Filter, EpcPositionUnit.None, 0, (ulong)filter);
            return false;
        }

        IdentityBits bits = identity.Contents;
        bits.Scheme = scheme;
        bits.Filter = (byte)filter;
        Span<ulong> words = stackalloc ulong[Bits.Words];
        if (!codec.TryEncode(bits, words, out _, ref fault))
        {
            return false;
        }

        fields = new EpcFields(bits);
        return true;
    }
}
