using System.Text.Json.Serialization;

namespace ToolLedger.Presence;

/// <summary>The JSON shapes of this room.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingDefault,
    AllowDuplicateProperties = false,
    MaxDepth = 64)]
[JsonSerializable(typeof(TagHistoryFile))]
internal sealed partial class PresenceJson : JsonSerializerContext;
