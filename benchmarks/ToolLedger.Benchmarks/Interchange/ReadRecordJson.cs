using System.Text.Json.Serialization;

namespace ToolLedger.Benchmarks.Interchange;

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(ReadRecord))]
internal sealed partial class ReadRecordJson : JsonSerializerContext;
