using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>A component or part with a serial number (GS1 TDS 2.3, s.6.3).</summary>
/// <remarks>The default value has no identity. Immutable, and therefore safe for use by any number of threads.</remarks>
public readonly record struct Cpi : IEpcKey<Cpi>
{
    private Cpi(EpcIdentity identity) => Identity = identity;

    /// <summary>The identity that this value is.</summary>
    public EpcIdentity Identity { get; }

    /// <summary>The GS1 company prefix: 6 to 12 digits.</summary>
    public EpcComponent CompanyPrefix => Identity.CompanyPrefix;

    /// <summary>The component or part reference: at least one of the characters # - / 0-9 A-Z, and with the prefix at most 30.</summary>
    public EpcComponent PartReference => Identity.Reference;

    /// <summary>The serial number: up to 12 digits without leading zeros.</summary>
    public EpcComponent Serial => Identity.Serial;

    /// <summary>Puts the components together.</summary>
    /// <param name="companyPrefix">The GS1 company prefix: 6 to 12 digits.</param>
    /// <param name="partReference">The component or part reference: at least one of the characters # - / 0-9 A-Z, and with the prefix at most 30.</param>
    /// <param name="serial">The serial number: up to 12 digits without leading zeros.</param>
    /// <param name="key">The value, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether every component follows its rule.</returns>
    public static bool TryCreate(
        ReadOnlySpan<char> companyPrefix,
        ReadOnlySpan<char> partReference,
        ReadOnlySpan<char> serial,
        out Cpi key,
        out EpcFault fault)
    {
        bool valid = EpcIdentity.TryCreate(EpcKind.Cpi, companyPrefix, partReference, serial, 0, 0, out EpcIdentity identity, out fault);
        key = new Cpi(identity);
        return valid;
    }

    bool IEpcKey<Cpi>.TryFrom(in EpcIdentity identity, out Cpi key)
    {
        bool fits = identity.Kind == EpcKind.Cpi;
        key = fits ? new Cpi(identity) : default;
        return fits;
    }

    /// <summary>The pure identity URI.</summary>
    /// <returns>The URI; empty text for the default value.</returns>
    public override string ToString() => Identity.ToUri();
}
