using System.Text.Json.Serialization;

namespace ToolLedger.Records;

/// <summary>Base of the types that mirror a whole file: its first member names kind and version.</summary>
internal abstract class JsonRecordFile : JsonRecord
{
    [JsonPropertyOrder(-1)]
    public JsonText Schema { get; set; }
}
