namespace ToolLedger.Identifiers;

/// <summary>How an element string is written.</summary>
public enum ElementStringForm
{
    /// <summary>For people: application identifiers in brackets.</summary>
    Bracketed = 0,

    /// <summary>As a scanner transmits it: no brackets, and the group separator 1Dh behind values of variable length that
    /// are not the last one.</summary>
    Raw,
}
