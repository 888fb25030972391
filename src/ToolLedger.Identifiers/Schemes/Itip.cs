using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>A piece of a trade item with a serial number (GS1 TDS 2.3, s.6.3).</summary>
/// <remarks>The default value has no identity. Immutable, and therefore safe for use by any number of threads.</remarks>
public readonly record struct Itip : IEpcKey<Itip>
{
    private Itip(EpcIdentity identity) => Identity = identity;

    /// <summary>The identity that this value is.</summary>
    public EpcIdentity Identity { get; }

    /// <summary>The GS1 company prefix: 6 to 12 digits.</summary>
    public EpcComponent CompanyPrefix => Identity.CompanyPrefix;

    /// <summary>The indicator digit and the item reference: the digits that the prefix leaves of 13.</summary>
    public EpcComponent ItemReference => Identity.Reference;

    /// <summary>The number of the piece, 0 to 99.</summary>
    public int Piece => Identity.Piece;

    /// <summary>The number of pieces, 0 to 99.</summary>
    public int Total => Identity.Total;

    /// <summary>The serial number: 1 to 20 characters.</summary>
    public EpcComponent Serial => Identity.Serial;

    /// <summary>Puts the components together.</summary>
    /// <param name="companyPrefix">The GS1 company prefix: 6 to 12 digits.</param>
    /// <param name="itemReference">The indicator digit and the item reference: the digits that the prefix leaves of 13.</param>
    /// <param name="piece">The number of the piece, 0 to 99.</param>
    /// <param name="total">The number of pieces, 0 to 99.</param>
    /// <param name="serial">The serial number: 1 to 20 characters.</param>
    /// <param name="key">The value, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether every component follows its rule.</returns>
    public static bool TryCreate(
        ReadOnlySpan<char> companyPrefix,
        ReadOnlySpan<char> itemReference,
        int piece,
        int total,
        ReadOnlySpan<char> serial,
        out Itip key,
        out EpcFault fault)
    {
        bool valid = EpcIdentity.TryCreate(EpcKind.Itip, companyPrefix, itemReference, serial, piece, total, out EpcIdentity identity, out fault);
        key = new Itip(identity);
        return valid;
    }

    bool IEpcKey<Itip>.TryFrom(in EpcIdentity identity, out Itip key)
    {
        bool fits = identity.Kind == EpcKind.Itip;
        key = fits ? new Itip(identity) : default;
        return fits;
    }

    /// <summary>The pure identity URI.</summary>
    /// <returns>The URI; empty text for the default value.</returns>
    public override string ToString() => Identity.ToUri();
}
