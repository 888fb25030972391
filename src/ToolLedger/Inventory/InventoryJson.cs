using System.Text.Json.Serialization;

namespace ToolLedger.Inventory;

/// <summary>Source-generated JSON of this room.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingDefault,
    AllowDuplicateProperties = false,
    MaxDepth = 64)]
[JsonSerializable(typeof(InventorySheetFile))]
internal sealed partial class InventoryJson : JsonSerializerContext;
