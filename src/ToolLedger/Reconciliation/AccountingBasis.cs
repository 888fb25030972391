namespace ToolLedger.Reconciliation;

/// <summary>What an accounted line rests on, the one named first lowest.</summary>
public enum AccountingBasis
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>A person saw it and read its own mark.</summary>
    Sighted,

    /// <summary>A person counted it in the unit of the line.</summary>
    Counted,

    /// <summary>Its live tag was read as the presence policy asks, without a conflict.</summary>
    Read,

    /// <summary>A record signed by the receiving party places it elsewhere.</summary>
    Record,

    /// <summary>A sub-kit without a case of its own: all lines inside are accounted for, each on its own basis.</summary>
    Inside,
}
