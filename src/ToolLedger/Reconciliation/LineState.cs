namespace ToolLedger.Reconciliation;

/// <summary>Where a manifest line stands. The order is that in which rules compose: the lowest verdict is the conclusion.</summary>
/// <remarks>None of these says missing, lost or found: only a person does.</remarks>
public enum LineState
{
    /// <summary>The evidence contradicts itself or the record: identity in doubt, or more than expected.</summary>
    Conflict,

    /// <summary>Part of it is shown: pieces or a count below the expected one, or a holder without its contents.</summary>
    Partial,

    /// <summary>No measurement of it took place.</summary>
    NotAssessed,

    /// <summary>A live tag, a usable session, and no look. This is not missing.</summary>
    NotRead,

    /// <summary>Some looks, fewer than the policy asks for.</summary>
    Weak,

    /// <summary>A named basis shows where it is.</summary>
    Accounted,
}
