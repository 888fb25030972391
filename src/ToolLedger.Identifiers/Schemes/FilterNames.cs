namespace ToolLedger.Identifiers.Schemes;

/// <summary>Filter values (GS1 TDS 2.3, chapter 10). A codec takes every value; an encoder should write no reserved one.</summary>
internal static class FilterNames
{
    private const string Other = "all others";
    private const string Reserved = "reserved";

    internal static string Of(EpcKind kind, int filter) => kind switch
    {
        EpcKind.Unknown or EpcKind.Gid => string.Empty,
        EpcKind.Adi => OfAdi(filter),
        EpcKind.Usdod => filter switch { 0 => "pallet", 1 => "case", 2 => "unit pack", _ => Reserved },
        _ when filter == 0 => Other,
        EpcKind.Sgtin => OfSgtin(filter),
        EpcKind.Sscc => filter switch { 2 => "full case", 6 => "unit load", _ => Reserved },
        EpcKind.Giai when filter == 1 => "rail vehicle",
        EpcKind.Gdti when filter == 1 => "travel document",
        _ => Reserved,
    };

    private static string OfSgtin(int filter) => filter switch
    {
        1 => "point-of-sale item",
        2 => "full case",
        4 => "inner pack",
        6 => "unit load",
        7 => "unit inside an item, or component not sold alone",
        _ => Reserved,
    };

    private static string OfAdi(int filter) => filter switch
    {
        0 => Other,
        1 => "item other than those of 8 to 63",
        2 => "carton",
        6 => "pallet",
        8 => "seat cushions",
        9 => "seat covers",
        10 => "seat belts",
        11 => "galley equipment",
        12 => "unit load device",
        13 => "security items",
        14 => "life vests",
        15 => "oxygen generators",
        16 => "engine components",
        17 => "avionics",
        18 => "flight-test equipment",
        19 => "other emergency equipment",
        20 => "other rotables",
        21 => "other repairables",
        22 => "other cabin interior",
        23 => "other repair",
        24 => "passenger seats",
        25 => "in-flight entertainment",
        56 => "location identifier",
        57 => "documentation",
        58 => "tools",
        59 => "ground support equipment",
        60 => "other non-flyable equipment",
        61 or 62 or 63 => "internal use",
        _ => Reserved,
    };
}
