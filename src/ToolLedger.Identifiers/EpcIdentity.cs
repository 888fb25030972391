using System;

namespace ToolLedger.Identifiers;

/// <summary>
/// What is identified, independent of how a tag codes it: a kind and its components (a pure identity of GS1 TDS 2.3, chapter 6).
/// An SGTIN-96 and an SGTIN-198 of the same serial number hold equal identities.
/// </summary>
/// <remarks>
/// The default value has kind <see cref="EpcKind.Unknown"/> and no components. Only components that are valid for the kind
/// can be put together. Immutable, and therefore safe for use by any number of threads.
/// </remarks>
public readonly partial struct EpcIdentity : IEquatable<EpcIdentity>
{
    private readonly IdentityBits _bits;

    // Trusted: the components fit the kind.
    internal EpcIdentity(in IdentityBits bits) => _bits = bits;

    /// <summary>The kind.</summary>
    public EpcKind Kind => _bits.Kind;

    /// <summary>The first component: GS1 company prefix, manager number, CAGE code or DoDAAC, container or vessel number.</summary>
    public EpcComponent CompanyPrefix => _bits.A;

    /// <summary>The second component: item, asset, location, document, coupon or part reference, object class, part number;
    /// for USDoD the serial number. Empty where the kind has none or the prefix leaves no digits.</summary>
    public EpcComponent Reference => _bits.B;

    /// <summary>The serial number, location extension or lot; empty where the kind has none.</summary>
    public EpcComponent Serial => _bits.C;

    /// <summary>The number of the piece, 0 to 99; 0 unless the kind is <see cref="EpcKind.Itip"/>.</summary>
    public int Piece => _bits.Piece;

    /// <summary>The number of pieces, 0 to 99; 0 unless the kind is <see cref="EpcKind.Itip"/>.</summary>
    public int Total => _bits.Total;

    internal IdentityBits Contents => _bits;

    /// <summary>Whether both name the same.</summary>
    /// <param name="other">The other identity.</param>
    /// <returns>The answer.</returns>
    public bool Equals(EpcIdentity other) =>
        _bits.Kind == other._bits.Kind && _bits.A == other._bits.A && _bits.B == other._bits.B && _bits.C == other._bits.C
        && _bits.Piece == other._bits.Piece && _bits.Total == other._bits.Total;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is EpcIdentity other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => (int)EpcHash.Mix(
        ((ulong)(uint)_bits.A.GetHashCode() << 32) | (uint)_bits.B.GetHashCode(),
        ((ulong)(uint)_bits.C.GetHashCode() << 32) | ((uint)_bits.Kind << 16) | ((uint)_bits.Piece << 8) | _bits.Total,
        0);

    /// <summary>The pure identity URI.</summary>
    /// <returns>The URI; empty text for the default value.</returns>
    public override string ToString() => ToUri();

    /// <summary>Whether both name the same.</summary>
    /// <param name="left">One identity.</param>
    /// <param name="right">The other identity.</param>
    /// <returns>The answer.</returns>
    public static bool operator ==(EpcIdentity left, EpcIdentity right) => left.Equals(right);

    /// <summary>Whether they name different things.</summary>
    /// <param name="left">One identity.</param>
    /// <param name="right">The other identity.</param>
    /// <returns>The answer.</returns>
    public static bool operator !=(EpcIdentity left, EpcIdentity right) => !left.Equals(right);
}
