namespace ToolLedger.Custody;

/// <summary>Which tools of their own people may carry in.</summary>
public enum PersonalToolRule
{
    /// <summary>None.</summary>
    Forbidden,

    /// <summary>Those that stand in the register the organisation keeps of them.</summary>
    RegisteredOnly,

    /// <summary>Any.</summary>
    Allowed,
}
