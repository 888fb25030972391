using System.Text.Json.Serialization;

namespace ToolLedger.Tools;

/// <summary>The JSON shapes of this room.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingDefault,
    AllowDuplicateProperties = false,
    MaxDepth = 64)]
[JsonSerializable(typeof(TagRegisterFile))]
internal sealed partial class ToolsJson : JsonSerializerContext;
