namespace ToolLedger.Holds;

/// <summary>What the decision to release rests on.</summary>
public enum ReleaseGround
{
    /// <summary>It was not found, and the search was discontinued by decision.</summary>
    NotFound,

    /// <summary>It was found.</summary>
    Found,

    /// <summary>It is known where it is, and left there by decision.</summary>
    LeftInPlace,

    /// <summary>It had never been missing.</summary>
    DeclaredInError,
}
