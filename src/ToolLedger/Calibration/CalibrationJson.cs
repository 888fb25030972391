using System.Text.Json.Serialization;

namespace ToolLedger.Calibration;

/// <summary>Source-generated JSON of this room.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingDefault,
    AllowDuplicateProperties = false,
    MaxDepth = 64)]
[JsonSerializable(typeof(CalibrationRegisterFile))]
[JsonSerializable(typeof(CalibrationEntry))]
internal sealed partial class CalibrationJson : JsonSerializerContext;
