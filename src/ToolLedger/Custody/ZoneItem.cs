using ToolLedger.Records;

namespace ToolLedger.Custody;

/// <summary>What is counted in a zone log: an item in a unit.</summary>
internal readonly record struct ZoneItem(Place Zone, string Item, Unit Unit);
