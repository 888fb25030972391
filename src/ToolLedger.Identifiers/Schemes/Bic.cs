using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>A freight container (ISO 6346). It has no coding for tags.</summary>
/// <remarks>The default value has no identity. Immutable, and therefore safe for use by any number of threads.</remarks>
public readonly record struct Bic : IEpcKey<Bic>
{
    private Bic(EpcIdentity identity) => Identity = identity;

    /// <summary>The identity that this value is.</summary>
    public EpcIdentity Identity { get; }

    /// <summary>Three owner letters, one of J, U, Z, six digits and a check digit.</summary>
    public EpcComponent ContainerNumber => Identity.CompanyPrefix;

    /// <summary>Puts the components together.</summary>
    /// <param name="containerNumber">Three owner letters, one of J, U, Z, six digits and a check digit.</param>
    /// <param name="key">The value, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether every component follows its rule.</returns>
    public static bool TryCreate(
        ReadOnlySpan<char> containerNumber,
        out Bic key,
        out EpcFault fault)
    {
        bool valid = EpcIdentity.TryCreate(EpcKind.Bic, containerNumber, default, default, 0, 0, out EpcIdentity identity, out fault);
        key = new Bic(identity);
        return valid;
    }

    bool IEpcKey<Bic>.TryFrom(in EpcIdentity identity, out Bic key)
    {
        bool fits = identity.Kind == EpcKind.Bic;
        key = fits ? new Bic(identity) : default;
        return fits;
    }

    /// <summary>The pure identity URI.</summary>
    /// <returns>The URI; empty text for the default value.</returns>
    public override string ToString() => Identity.ToUri();
}
