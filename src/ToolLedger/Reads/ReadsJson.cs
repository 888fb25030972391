using System.Text.Json.Serialization;

namespace ToolLedger.Reads;

/// <summary>The JSON shapes of this room.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingDefault,
    AllowDuplicateProperties = false)]
[JsonSerializable(typeof(PresentationFile))]
internal sealed partial class ReadsJson : JsonSerializerContext;
