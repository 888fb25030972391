using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>A trade item with a serial number (GS1 TDS 2.3, s.6.3.1).</summary>
/// <remarks>The default value has no identity. Immutable, and therefore safe for use by any number of threads.</remarks>
public readonly record struct Sgtin : IEpcKey<Sgtin>
{
    private Sgtin(EpcIdentity identity) => Identity = identity;

    /// <summary>The identity that this value is.</summary>
    public EpcIdentity Identity { get; }

    /// <summary>The GS1 company prefix: 6 to 12 digits.</summary>
    public EpcComponent CompanyPrefix => Identity.CompanyPrefix;

    /// <summary>The indicator digit and the item reference: the digits that the prefix leaves of 13.</summary>
    public EpcComponent ItemReference => Identity.Reference;

    /// <summary>The serial number: 1 to 20 characters.</summary>
    public EpcComponent Serial => Identity.Serial;

    /// <summary>Puts the components together.</summary>
    /// <param name="companyPrefix">The GS1 company prefix: 6 to 12 digits.</param>
    /// <param name="itemReference">The indicator digit and the item reference: the digits that the prefix leaves of 13.</param>
    /// <param name="serial">The serial number: 1 to 20 characters.</param>
    /// <param name="key">The value, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether every component follows its rule.</returns>
    public static bool TryCreate(
        ReadOnlySpan<char> companyPrefix,
        ReadOnlySpan<char> itemReference,
        ReadOnlySpan<char> serial,
        out Sgtin key,
        out EpcFault fault)
    {
        bool valid = EpcIdentity.TryCreate(EpcKind.Sgtin, companyPrefix, itemReference, serial, 0, 0, out EpcIdentity identity, out fault);
        key = new Sgtin(identity);
        return valid;
    }

    bool IEpcKey<Sgtin>.TryFrom(in EpcIdentity identity, out Sgtin key)
    {
        bool fits = identity.Kind == EpcKind.Sgtin;
        key = fits ? new Sgtin(identity) : default;
        return fits;
    }

    /// <summary>The pure identity URI.</summary>
    /// <returns>The URI; empty text for the default value.</returns>
    public override string ToString() => Identity.ToUri();
}
