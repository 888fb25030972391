using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>A document of a type with a serial number (GS1 TDS 2.3, s.6.3.8).</summary>
/// <remarks>The default value has no identity. Immutable, and therefore safe for use by any number of threads.</remarks>
public readonly record struct Gdti : IEpcKey<Gdti>
{
    private Gdti(EpcIdentity identity) => Identity = identity;

    /// <summary>The identity that this value is.</summary>
    public EpcIdentity Identity { get; }

    /// <summary>The GS1 company prefix: 6 to 12 digits.</summary>
    public EpcComponent CompanyPrefix => Identity.CompanyPrefix;

    /// <summary>The document type: the digits that the prefix leaves of 12.</summary>
    public EpcComponent DocumentType => Identity.Reference;

    /// <summary>The serial number: 1 to 17 characters.</summary>
    public EpcComponent Serial => Identity.Serial;

    /// <summary>Puts the components together.</summary>
    /// <param name="companyPrefix">The GS1 company prefix: 6 to 12 digits.</param>
    /// <param name="documentType">The document type: the digits that the prefix leaves of 12.</param>
    /// <param name="serial">The serial number: 1 to 17 characters.</param>
    /// <param name="key">The value, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether every component follows its rule.</returns>
    public static bool TryCreate(
        ReadOnlySpan<char> companyPrefix,
        ReadOnlySpan<char> documentType,
        ReadOnlySpan<char> serial,
        out Gdti key,
        out EpcFault fault)
    {
        bool valid = EpcIdentity.TryCreate(EpcKind.Gdti, companyPrefix, documentType, serial, 0, 0, out EpcIdentity identity, out fault);
        key = new Gdti(identity);
        return valid;
    }

    bool IEpcKey<Gdti>.TryFrom(in EpcIdentity identity, out Gdti key)
    {
        bool fits = identity.Kind == EpcKind.Gdti;
        key = fits ? new Gdti(identity) : default;
        return fits;
    }

    /// <summary>The pure identity URI.</summary>
    /// <returns>The URI; empty text for the default value.</returns>
    public override string ToString() => Identity.ToUri();
}
