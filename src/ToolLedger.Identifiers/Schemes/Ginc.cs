using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>A consignment (GS1 TDS 2.3, s.6.3). It has no coding for tags.</summary>
/// <remarks>The default value has no identity. Immutable, and therefore safe for use by any number of threads.</remarks>
public readonly record struct Ginc : IEpcKey<Ginc>
{
    private Ginc(EpcIdentity identity) => Identity = identity;

    /// <summary>The identity that this value is.</summary>
    public EpcIdentity Identity { get; }

    /// <summary>The GS1 company prefix: 6 to 12 digits.</summary>
    public EpcComponent CompanyPrefix => Identity.CompanyPrefix;

    /// <summary>The consignment reference: at least one character, and with the prefix at most 30.</summary>
    public EpcComponent ConsignmentReference => Identity.Reference;

    /// <summary>Puts the components together.</summary>
    /// <param name="companyPrefix">The GS1 company prefix: 6 to 12 digits.</param>
    /// <param name="consignmentReference">The consignment reference: at least one character, and with the prefix at most 30.</param>
    /// <param name="key">The value, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether every component follows its rule.</returns>
    public static bool TryCreate(
        ReadOnlySpan<char> companyPrefix,
        ReadOnlySpan<char> consignmentReference,
        out Ginc key,
        out EpcFault fault)
    {
        bool valid = EpcIdentity.TryCreate(EpcKind.Ginc, companyPrefix, consignmentReference, default, 0, 0, out EpcIdentity identity, out fault);
        key = new Ginc(identity);
        return valid;
    }

    bool IEpcKey<Ginc>.TryFrom(in EpcIdentity identity, out Ginc key)
    {
        bool fits = identity.Kind == EpcKind.Ginc;
        key = fits ? new Ginc(identity) : default;
        return fits;
    }

    /// <summary>The pure identity URI.</summary>
    /// <returns>The URI; empty text for the default value.</returns>
    public override string ToString() => Identity.ToUri();
}
