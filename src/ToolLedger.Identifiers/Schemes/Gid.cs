using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>A general identifier (GS1 TDS 2.3, s.6.3). Numbers have not been issued since June 2023.</summary>
/// <remarks>The default value has no identity. Immutable, and therefore safe for use by any number of threads.</remarks>
public readonly record struct Gid : IEpcKey<Gid>
{
    private Gid(EpcIdentity identity) => Identity = identity;

    /// <summary>The identity that this value is.</summary>
    public EpcIdentity Identity { get; }

    /// <summary>The general manager number: 0 to 268,435,455.</summary>
    public EpcComponent ManagerNumber => Identity.CompanyPrefix;

    /// <summary>The object class: 0 to 16,777,215.</summary>
    public EpcComponent ObjectClass => Identity.Reference;

    /// <summary>The serial number: 0 to 68,719,476,735.</summary>
    public EpcComponent Serial => Identity.Serial;

    /// <summary>Puts the components together.</summary>
    /// <param name="managerNumber">The general manager number: 0 to 268,435,455.</param>
    /// <param name="objectClass">The object class: 0 to 16,777,215.</param>
    /// <param name="serial">The serial number: 0 to 68,719,476,735.</param>
    /// <param name="key">The value, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether every component follows its rule.</returns>
    public static bool TryCreate(
        ReadOnlySpan<char> managerNumber,
        ReadOnlySpan<char> objectClass,
        ReadOnlySpan<char> serial,
        out Gid key,
        out EpcFault fault)
    {
        bool valid = EpcIdentity.TryCreate(EpcKind.Gid, managerNumber, objectClass, serial, 0, 0, out EpcIdentity identity, out fault);
        key = new Gid(identity);
        return valid;
    }

    bool IEpcKey<Gid>.TryFrom(in EpcIdentity identity, out Gid key)
    {
        bool fits = identity.Kind == EpcKind.Gid;
        key = fits ? new Gid(identity) : default;
        return fits;
    }

    /// <summary>The pure identity URI.</summary>
    /// <returns>The URI; empty text for the default value.</returns>
    public override string ToString() => Identity.ToUri();
}
