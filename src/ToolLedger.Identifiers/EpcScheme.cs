namespace ToolLedger.Identifiers;

/// <summary>
/// The binary coding schemes of the EPC Tag Data Standard that the first eight bits of an EPC select
/// (GS1 TDS 2.3, Table 14-1). The list is closed; members are added at the end when the standard grows.
/// </summary>
public enum EpcScheme
{
    /// <summary>No scheme of this list: a reserved header, a header of another family, or fewer than eight bits.</summary>
    Unknown = 0,

    /// <summary>Header 00h: the tag has not been programmed.</summary>
    Unprogrammed = 1,

    /// <summary>SGTIN-96: trade item with a serial number of up to 38 bits.</summary>
    Sgtin96 = 2,

    /// <summary>SGTIN-198: trade item with a serial number of 1 to 20 characters.</summary>
    Sgtin198 = 3,

    /// <summary>SSCC-96: logistic unit.</summary>
    Sscc96 = 4,

    /// <summary>SGLN-96: location with a numeric extension.</summary>
    Sgln96 = 5,

    /// <summary>SGLN-195: location with an extension of 1 to 20 characters.</summary>
    Sgln195 = 6,

    /// <summary>GRAI-96: returnable asset with a numeric serial number.</summary>
    Grai96 = 7,

    /// <summary>GRAI-170: returnable asset with a serial number of 1 to 16 characters.</summary>
    Grai170 = 8,

    /// <summary>GIAI-96: individual asset with a numeric reference.</summary>
    Giai96 = 9,

    /// <summary>GIAI-202: individual asset with a reference of characters.</summary>
    Giai202 = 10,

    /// <summary>GSRN-96: service relation, recipient.</summary>
    Gsrn96 = 11,

    /// <summary>GSRNP-96: service relation, provider.</summary>
    Gsrnp96 = 12,

    /// <summary>GDTI-96: document type with a numeric serial number.</summary>
    Gdti96 = 13,

    /// <summary>GDTI-113: document type with 1 to 17 digits, leading zeros kept. Deprecated since TDS 1.9.</summary>
    Gdti113 = 14,

    /// <summary>GDTI-174: document type with a serial number of 1 to 17 characters.</summary>
    Gdti174 = 15,

    /// <summary>CPI-96: component or part with a numeric reference.</summary>
    Cpi96 = 16,

    /// <summary>CPI-var: component or part with a reference of characters, of variable length.</summary>
    CpiVar = 17,

    /// <summary>SGCN-96: coupon with up to 12 digits, leading zeros kept.</summary>
    Sgcn96 = 18,

    /// <summary>ITIP-110: piece of a trade item with a numeric serial number.</summary>
    Itip110 = 19,

    /// <summary>ITIP-212: piece of a trade item with a serial number of 1 to 20 characters.</summary>
    Itip212 = 20,

    /// <summary>GID-96: general identifier.</summary>
    Gid96 = 21,

    /// <summary>USDoD-96: supplier of the United States Department of Defense with a numeric serial number.</summary>
    Usdod96 = 22,

    /// <summary>ADI-var: aerospace and defense identifier, of variable length.</summary>
    AdiVar = 23,
}
