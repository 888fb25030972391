namespace ToolLedger.Identifiers;

/// <summary>What may stand in a component.</summary>
internal enum ComponentForm
{
    /// <summary>6 to 12 digits.</summary>
    CompanyPrefix,

    /// <summary>Exactly as many digits as the prefix leaves of the total.</summary>
    Remainder,

    /// <summary>Characters of TDS 2.3, Table A-1 (82 of them).</summary>
    Characters82,

    /// <summary>Characters of TDS 2.3, Table G-1 (39 of them).</summary>
    Characters39,

    /// <summary>Characters of Table G-1 without the number sign.</summary>
    PartNumber,

    /// <summary>Characters of Table G-1; the number sign only first and not alone.</summary>
    MarkedSerial,

    /// <summary>Decimal digits, leading zeros kept.</summary>
    Digits,

    /// <summary>A number without leading zeros.</summary>
    Number,

    /// <summary>Exactly the maximum number of digits.</summary>
    FixedDigits,

    /// <summary>A CAGE code or DoDAAC.</summary>
    Cage,

    /// <summary>A container number by ISO 6346.</summary>
    ContainerNumber,
}
