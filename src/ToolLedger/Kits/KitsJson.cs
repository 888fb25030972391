using System.Text.Json.Serialization;

namespace ToolLedger.Kits;

/// <summary>The JSON shapes of this room.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingDefault,
    AllowDuplicateProperties = false,
    MaxDepth = 64)]
[JsonSerializable(typeof(KitManifestFile))]
internal sealed partial class KitsJson : JsonSerializerContext;
