namespace ToolLedger.Identifiers;

/// <summary>The part of an identifier that a rule speaks about. The list is closed.</summary>
public enum EpcField
{
    /// <summary>No part in particular.</summary>
    None = 0,

    /// <summary>The first eight bits, which select the coding scheme.</summary>
    Header,

    /// <summary>The filter value.</summary>
    Filter,

    /// <summary>The partition value, which tells how long the company prefix is.</summary>
    Partition,

    /// <summary>The GS1 company prefix.</summary>
    CompanyPrefix,

    /// <summary>The component after the company prefix: item, asset, location, document, coupon, part or serial reference.</summary>
    Reference,

    /// <summary>The serial number, or the extension of a location.</summary>
    Serial,

    /// <summary>The number of a piece.</summary>
    Piece,

    /// <summary>The number of pieces.</summary>
    Total,

    /// <summary>Bits that must be zero.</summary>
    Reserved,

    /// <summary>The CAGE code or DoDAAC.</summary>
    Cage,

    /// <summary>The part number.</summary>
    PartNumber,

    /// <summary>The general manager number.</summary>
    ManagerNumber,

    /// <summary>The object class.</summary>
    ObjectClass,

    /// <summary>Bits behind the end of the coding.</summary>
    Padding,

    /// <summary>The beginning of a URI and the name of its scheme.</summary>
    Scheme,

    /// <summary>A control field of a tag URI.</summary>
    Control,

    /// <summary>A check digit.</summary>
    CheckDigit,

    /// <summary>The number of a GS1 application identifier.</summary>
    ApplicationIdentifier,

    /// <summary>The value of a GS1 application identifier.</summary>
    Value,

    /// <summary>The stem or path of a Digital Link.</summary>
    Path,

    /// <summary>The batch or lot.</summary>
    Lot,

    /// <summary>The length field of the protocol control word.</summary>
    Length,
}
