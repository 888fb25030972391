namespace ToolLedger.Identifiers;

/// <summary>
/// The binary coding schemes of the EPC Tag Data Standard that the first eight bits of an EPC select
/// (GS1 TDS 2.3, Table 14-1), all of them, whether or not this version of the library reads their fields.
/// The list is closed; members are added at the end when the standard grows.
/// </summary>
public enum EpcScheme
{
    /// <summary>No scheme of this list: a reserved header, a header of another family, or fewer than eight bits.</summary>
    Unknown = 0,

    /// <summary>Header 00h: the tag has not been programmed.</summary>
    Unprogrammed,

    /// <summary>SGTIN-96: trade item with a serial number of up to 38 bits.</summary>
    Sgtin96,

    /// <summary>SGTIN-198: trade item with a serial number of 1 to 20 characters.</summary>
    Sgtin198,

    /// <summary>SSCC-96: logistic unit.</summary>
    Sscc96,

    /// <summary>SGLN-96: location with a numeric extension.</summary>
    Sgln96,

    /// <summary>SGLN-195: location with an extension of 1 to 20 characters.</summary>
    Sgln195,

    /// <summary>GRAI-96: returnable asset with a numeric serial number.</summary>
    Grai96,

    /// <summary>GRAI-170: returnable asset with a serial number of 1 to 16 characters.</summary>
    Grai170,

    /// <summary>GIAI-96: individual asset with a numeric reference.</summary>
    Giai96,

    /// <summary>GIAI-202: individual asset with a reference of characters.</summary>
    Giai202,

    /// <summary>GSRN-96: service relation, recipient.</summary>
    Gsrn96,

    /// <summary>GSRNP-96: service relation, provider.</summary>
    Gsrnp96,

    /// <summary>GDTI-96: document type with a numeric serial number.</summary>
    Gdti96,

    /// <summary>GDTI-113: document type with 1 to 17 digits, leading zeros kept. Deprecated since TDS 1.9.</summary>
    Gdti113,

    /// <summary>GDTI-174: document type with a serial number of 1 to 17 characters.</summary>
    Gdti174,

    /// <summary>CPI-96: component or part with a numeric reference.</summary>
    Cpi96,

    /// <summary>CPI-var: component or part with a reference of characters, of variable length.</summary>
    CpiVar,

    /// <summary>SGCN-96: coupon with up to 12 digits, leading zeros kept.</summary>
    Sgcn96,

    /// <summary>ITIP-110: piece of a trade item with a numeric serial number.</summary>
    Itip110,

    /// <summary>ITIP-212: piece of a trade item with a serial number of 1 to 20 characters.</summary>
    Itip212,

    /// <summary>GID-96: general identifier.</summary>
    Gid96,

    /// <summary>USDoD-96: supplier of the United States Department of Defense with a numeric serial number.</summary>
    Usdod96,

    /// <summary>ADI-var: aerospace and defense identifier, of variable length.</summary>
    AdiVar,

    /// <summary>SGTIN+ (TDS 2.0).</summary>
    SgtinPlus,

    /// <summary>SGTIN+ with a date in front (DSGTIN+, TDS 2.0).</summary>
    DsgtinPlus,

    /// <summary>SSCC+ (TDS 2.0).</summary>
    SsccPlus,

    /// <summary>SGLN+ (TDS 2.0).</summary>
    SglnPlus,

    /// <summary>GRAI+ (TDS 2.0).</summary>
    GraiPlus,

    /// <summary>GIAI+ (TDS 2.0).</summary>
    GiaiPlus,

    /// <summary>GSRN+ (TDS 2.0).</summary>
    GsrnPlus,

    /// <summary>GSRNP+ (TDS 2.0).</summary>
    GsrnpPlus,

    /// <summary>GDTI+ (TDS 2.0).</summary>
    GdtiPlus,

    /// <summary>CPI+ (TDS 2.0).</summary>
    CpiPlus,

    /// <summary>SGCN+ (TDS 2.0).</summary>
    SgcnPlus,

    /// <summary>ITIP+ (TDS 2.0).</summary>
    ItipPlus,

    /// <summary>SGTIN++ (TDS 2.3).</summary>
    SgtinPlusPlus,

    /// <summary>SGTIN++ with a date in front (DSGTIN++, TDS 2.3).</summary>
    DsgtinPlusPlus,

    /// <summary>SSCC++ (TDS 2.3).</summary>
    SsccPlusPlus,

    /// <summary>SGLN++ (TDS 2.3).</summary>
    SglnPlusPlus,

    /// <summary>GRAI++ (TDS 2.3).</summary>
    GraiPlusPlus,

    /// <summary>GIAI++ (TDS 2.3).</summary>
    GiaiPlusPlus,

    /// <summary>GSRN++ (TDS 2.3).</summary>
    GsrnPlusPlus,

    /// <summary>GSRNP++ (TDS 2.3).</summary>
    GsrnpPlusPlus,

    /// <summary>GDTI++ (TDS 2.3).</summary>
    GdtiPlusPlus,

    /// <summary>CPI++ (TDS 2.3).</summary>
    CpiPlusPlus,

    /// <summary>SGCN++ (TDS 2.3).</summary>
    SgcnPlusPlus,

    /// <summary>ITIP++ (TDS 2.3).</summary>
    ItipPlusPlus,
}
