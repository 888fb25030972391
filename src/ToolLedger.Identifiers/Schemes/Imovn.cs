using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>A vessel (IMO number). It has no coding for tags.</summary>
/// <remarks>The default value has no identity. Immutable, and therefore safe for use by any number of threads.</remarks>
public readonly record struct Imovn : IEpcKey<Imovn>
{
    private Imovn(EpcIdentity identity) => Identity = identity;

    /// <summary>The identity that this value is.</summary>
    public EpcIdentity Identity { get; }

    /// <summary>Seven digits.</summary>
    public EpcComponent VesselNumber => Identity.CompanyPrefix;

    /// <summary>Puts the components together.</summary>
    /// <param name="vesselNumber">Seven digits.</param>
    /// <param name="key">The value, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether every component follows its rule.</returns>
    public static bool TryCreate(
        ReadOnlySpan<char> vesselNumber,
        out Imovn key,
        out EpcFault fault)
    {
        bool valid = EpcIdentity.TryCreate(EpcKind.Imovn, vesselNumber, default, default, 0, 0, out EpcIdentity identity, out fault);
        key = new Imovn(identity);
        return valid;
    }

    bool IEpcKey<Imovn>.TryFrom(in EpcIdentity identity, out Imovn key)
    {
        bool fits = identity.Kind == EpcKind.Imovn;
        key = fits ? new Imovn(identity) : default;
        return fits;
    }

    /// <summary>The pure identity URI.</summary>
    /// <returns>The URI; empty text for the default value.</returns>
    public override string ToString() => Identity.ToUri();
}
