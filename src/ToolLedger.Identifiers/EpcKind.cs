namespace ToolLedger.Identifiers;

/// <summary>
/// What an identity names, independent of how a tag codes it: the pure identity schemes of the EPC Tag Data Standard
/// (GS1 TDS 2.3, chapter 6). The list is closed; members are added at the end when the standard grows.
/// </summary>
public enum EpcKind
{
    /// <summary>No identity.</summary>
    Unknown = 0,

    /// <summary>Serialised trade item (<c>sgtin</c>).</summary>
    Sgtin,

    /// <summary>Logistic unit (<c>sscc</c>).</summary>
    Sscc,

    /// <summary>Location (<c>sgln</c>).</summary>
    Sgln,

    /// <summary>Returnable asset (<c>grai</c>).</summary>
    Grai,

    /// <summary>Individual asset (<c>giai</c>).</summary>
    Giai,

    /// <summary>Service relation, recipient (<c>gsrn</c>).</summary>
    Gsrn,

    /// <summary>Service relation, provider (<c>gsrnp</c>).</summary>
    Gsrnp,

    /// <summary>Document type with serial number (<c>gdti</c>).</summary>
    Gdti,

    /// <summary>Component or part with serial number (<c>cpi</c>).</summary>
    Cpi,

    /// <summary>Serialised coupon (<c>sgcn</c>).</summary>
    Sgcn,

    /// <summary>Piece of a trade item (<c>itip</c>).</summary>
    Itip,

    /// <summary>General identifier (<c>gid</c>).</summary>
    Gid,

    /// <summary>United States Department of Defense supplier and serial number (<c>usdod</c>).</summary>
    Usdod,

    /// <summary>Aerospace and defense identifier (<c>adi</c>).</summary>
    Adi,

    /// <summary>Unit pack identifier (<c>upui</c>); it has no coding for tags.</summary>
    Upui,

    /// <summary>Consignment (<c>ginc</c>); it has no coding for tags.</summary>
    Ginc,

    /// <summary>Shipment (<c>gsin</c>); it has no coding for tags.</summary>
    Gsin,

    /// <summary>Party (<c>pgln</c>); it has no coding for tags.</summary>
    Pgln,

    /// <summary>Trade item of a batch or lot (<c>lgtin</c>): a class, not a single object; it has no coding for tags.</summary>
    Lgtin,

    /// <summary>Freight container by ISO 6346 (<c>bic</c>); it has no coding for tags.</summary>
    Bic,

    /// <summary>Vessel by its IMO number (<c>imovn</c>); it has no coding for tags.</summary>
    Imovn,
}
