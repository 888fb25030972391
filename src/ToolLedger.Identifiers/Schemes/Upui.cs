using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>A unit pack (GS1 TDS 2.3, s.6.3). It has no coding for tags.</summary>
/// <remarks>The default value has no identity. Immutable, and therefore safe for use by any number of threads.</remarks>
public readonly record struct Upui : IEpcKey<Upui>
{
    private Upui(EpcIdentity identity) => Identity = identity;

    /// <summary>The identity that this value is.</summary>
    public EpcIdentity Identity { get; }

    /// <summary>The GS1 company prefix: 6 to 12 digits.</summary>
    public EpcComponent CompanyPrefix => Identity.CompanyPrefix;

    /// <summary>The indicator digit and the item reference: the digits that the prefix leaves of 13.</summary>
    public EpcComponent ItemReference => Identity.Reference;

    /// <summary>The third-party-controlled serialised extension: 1 to 28 characters.</summary>
    public EpcComponent ThirdPartyControlled => Identity.Serial;

    /// <summary>Puts the components together.</summary>
    /// <param name="companyPrefix">The GS1 company prefix: 6 to 12 digits.</param>
    /// <param name="itemReference">The indicator digit and the item reference: the digits that the prefix leaves of 13.</param>
    /// <param name="thirdPartyControlled">The third-party-controlled serialised extension: 1 to 28 characters.</param>
    /// <param name="key">The value, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether every component follows its rule.</returns>
    public static bool TryCreate(
        ReadOnlySpan<char> companyPrefix,
        ReadOnlySpan<char> itemReference,
        ReadOnlySpan<char> thirdPartyControlled,
        out Upui key,
        out EpcFault fault)
    {
        bool valid = EpcIdentity.TryCreate(EpcKind.Upui, companyPrefix, itemReference, thirdPartyControlled, 0, 0, out EpcIdentity identity, out fault);
        key = new Upui(identity);
        return valid;
    }

    bool IEpcKey<Upui>.TryFrom(in EpcIdentity identity, out Upui key)
    {
        bool fits = identity.Kind == EpcKind.Upui;
        key = fits ? new Upui(identity) : default;
        return fits;
    }

    /// <summary>The pure identity URI.</summary>
    /// <returns>The URI; empty text for the default value.</returns>
    public override string ToString() => Identity.ToUri();
}
