using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>A location with an extension (GS1 TDS 2.3, s.6.3.3).</summary>
/// <remarks>The default value has no identity. Immutable, and therefore safe for use by any number of threads.</remarks>
public readonly record struct Sgln : IEpcKey<Sgln>
{
    private Sgln(EpcIdentity identity) => Identity = identity;

    /// <summary>The identity that this value is.</summary>
    public EpcIdentity Identity { get; }

    /// <summary>The GS1 company prefix: 6 to 12 digits.</summary>
    public EpcComponent CompanyPrefix => Identity.CompanyPrefix;

    /// <summary>The location reference: the digits that the prefix leaves of 12.</summary>
    public EpcComponent LocationReference => Identity.Reference;

    /// <summary>The extension: 1 to 20 characters; 0 for none.</summary>
    public EpcComponent Extension => Identity.Serial;

    /// <summary>Puts the components together.</summary>
    /// <param name="companyPrefix">The GS1 company prefix: 6 to 12 digits.</param>
    /// <param name="locationReference">The location reference: the digits that the prefix leaves of 12.</param>
    /// <param name="extension">The extension: 1 to 20 characters; 0 for none.</param>
    /// <param name="key">The value, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether every component follows its rule.</returns>
    public static bool TryCreate(
        ReadOnlySpan<char> companyPrefix,
        ReadOnlySpan<char> locationReference,
        ReadOnlySpan<char> extension,
        out Sgln key,
        out EpcFault fault)
    {
        bool valid = EpcIdentity.TryCreate(EpcKind.Sgln, companyPrefix, locationReference, extension, 0, 0, out EpcIdentity identity, out fault);
        key = new Sgln(identity);
        return valid;
    }

    bool IEpcKey<Sgln>.TryFrom(in EpcIdentity identity, out Sgln key)
    {
        bool fits = identity.Kind == EpcKind.Sgln;
        key = fits ? new Sgln(identity) : default;
        return fits;
    }

    /// <summary>The pure identity URI.</summary>
    /// <returns>The URI; empty text for the default value.</returns>
    public override string ToString() => Identity.ToUri();
}
