using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>An aerospace and defense identifier (GS1 TDS 2.3, s.6.3.17).</summary>
/// <remarks>The default value has no identity. Immutable, and therefore safe for use by any number of threads.</remarks>
public readonly record struct Adi : IEpcKey<Adi>
{
    private Adi(EpcIdentity identity) => Identity = identity;

    /// <summary>The identity that this value is.</summary>
    public EpcIdentity Identity { get; }

    /// <summary>The CAGE code (5 characters) or DoDAAC (6 characters).</summary>
    public EpcComponent Cage => Identity.CompanyPrefix;

    /// <summary>The part number: up to 32 of the characters - / 0-9 A-Z; empty when the serial number is unique within the CAGE code.</summary>
    public EpcComponent PartNumber => Identity.Reference;

    /// <summary>The serial number: 1 to 30 of the characters # - / 0-9 A-Z; a number sign in front says that it is not the maker's own.</summary>
    public EpcComponent Serial => Identity.Serial;

    /// <summary>Puts the components together.</summary>
    /// <param name="cage">The CAGE code (5 characters) or DoDAAC (6 characters).</param>
    /// <param name="partNumber">The part number: up to 32 of the characters - / 0-9 A-Z; empty when the serial number is unique within the CAGE code.</param>
    /// <param name="serial">The serial number: 1 to 30 of the characters # - / 0-9 A-Z; a number sign in front says that it is not the maker's own.</param>
    /// <param name="key">The value, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether every component follows its rule.</returns>
    public static bool TryCreate(
        ReadOnlySpan<char> cage,
        ReadOnlySpan<char> partNumber,
        ReadOnlySpan<char> serial,
        out Adi key,
        out EpcFault fault)
    {
        bool valid = EpcIdentity.TryCreate(EpcKind.Adi, cage, partNumber, serial, 0, 0, out EpcIdentity identity, out fault);
        key = new Adi(identity);
        return valid;
    }

    bool IEpcKey<Adi>.TryFrom(in EpcIdentity identity, out Adi key)
    {
        bool fits = identity.Kind == EpcKind.Adi;
        key = fits ? new Adi(identity) : default;
        return fits;
    }

    /// <summary>The pure identity URI.</summary>
    /// <returns>The URI; empty text for the default value.</returns>
    public override string ToString() => Identity.ToUri();
}
