namespace ToolLedger.Reconciliation;

/// <summary>Where a kit stands.</summary>
public enum KitState
{
    /// <summary>Every line has a recorded basis under the stated policy. It does not replace an inspection that a directive requires.</summary>
    Complete,

    /// <summary>At least one line is not accounted for yet.</summary>
    Open,

    /// <summary>Positive evidence that list and fact differ, short or over.</summary>
    Discrepant,

    /// <summary>A tagged line is open and no session of the kit can be used.</summary>
    NoValidRead,
}
