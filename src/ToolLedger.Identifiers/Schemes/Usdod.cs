using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>A supplier of the United States Department of Defense and its serial number (GS1 TDS 2.3, s.6.3).</summary>
/// <remarks>The default value has no identity. Immutable, and therefore safe for use by any number of threads.</remarks>
public readonly record struct Usdod : IEpcKey<Usdod>
{
    private Usdod(EpcIdentity identity) => Identity = identity;

    /// <summary>The identity that this value is.</summary>
    public EpcIdentity Identity { get; }

    /// <summary>The CAGE code (5 characters) or DoDAAC (6 characters).</summary>
    public EpcComponent Cage => Identity.CompanyPrefix;

    /// <summary>The serial number: 0 to 68,719,476,735.</summary>
    public EpcComponent Serial => Identity.Reference;

    /// <summary>Puts the components together.</summary>
    /// <param name="cage">The CAGE code (5 characters) or DoDAAC (6 characters).</param>
    /// <param name="serial">The serial number: 0 to 68,719,476,735.</param>
    /// <param name="key">The value, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether every component follows its rule.</returns>
    public static bool TryCreate(
        ReadOnlySpan<char> cage,
        ReadOnlySpan<char> serial,
        out Usdod key,
        out EpcFault fault)
    {
        bool valid = EpcIdentity.TryCreate(EpcKind.Usdod, cage, serial, default, 0, 0, out EpcIdentity identity, out fault);
        key = new Usdod(identity);
        return valid;
    }

    bool IEpcKey<Usdod>.TryFrom(in EpcIdentity identity, out Usdod key)
    {
        bool fits = identity.Kind == EpcKind.Usdod;
        key = fits ? new Usdod(identity) : default;
        return fits;
    }

    /// <summary>The pure identity URI.</summary>
    /// <returns>The URI; empty text for the default value.</returns>
    public override string ToString() => Identity.ToUri();
}
