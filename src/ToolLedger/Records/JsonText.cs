using System.Runtime.InteropServices;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace ToolLedger.Records;

/// <summary>A member that should be text: absent, text, or something else, which is an issue and not an exception.</summary>
[JsonConverter(typeof(JsonTextConverter))]
[StructLayout(LayoutKind.Auto)]
internal readonly record struct JsonText(string? Value, JsonTokenType Found)
{
    internal JsonText(string? value)
        : this(value, value is null ? JsonTokenType.None : JsonTokenType.String)
    {
    }

    internal bool IsAbsent => Found == JsonTokenType.None;
}
