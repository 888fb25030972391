using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>A logistic unit (GS1 TDS 2.3, s.6.3.2).</summary>
/// <remarks>The default value has no identity. Immutable, and therefore safe for use by any number of threads.</remarks>
public readonly record struct Sscc : IEpcKey<Sscc>
{
    private Sscc(EpcIdentity identity) => Identity = identity;

    /// <summary>The identity that this value is.</summary>
    public EpcIdentity Identity { get; }

    /// <summary>The GS1 company prefix: 6 to 12 digits.</summary>
    public EpcComponent CompanyPrefix => Identity.CompanyPrefix;

    /// <summary>The extension digit and the serial reference: the digits that the prefix leaves of 17.</summary>
    public EpcComponent SerialReference => Identity.Reference;

    /// <summary>Puts the components together.</summary>
    /// <param name="companyPrefix">The GS1 company prefix: 6 to 12 digits.</param>
    /// <param name="serialReference">The extension digit and the serial reference: the digits that the prefix leaves of 17.</param>
    /// <param name="key">The value, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether every component follows its rule.</returns>
    public static bool TryCreate(
        ReadOnlySpan<char> companyPrefix,
        ReadOnlySpan<char> serialReference,
        out Sscc key,
        out EpcFault fault)
    {
        bool valid = EpcIdentity.TryCreate(EpcKind.Sscc, companyPrefix, serialReference, default, 0, 0, out EpcIdentity identity, out fault);
        key = new Sscc(identity);
        return valid;
    }

    bool IEpcKey<Sscc>.TryFrom(in EpcIdentity identity, out Sscc key)
    {
        bool fits = identity.Kind == EpcKind.Sscc;
        key = fits ? new Sscc(identity) : default;
        return fits;
    }

    /// <summary>The pure identity URI.</summary>
    /// <returns>The URI; empty text for the default value.</returns>
    public override string ToString() => Identity.ToUri();
}
