using System.Runtime.InteropServices;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace ToolLedger.Records;

/// <summary>A member that should be a number: absent, a number, or something else, which is an issue and not an exception.</summary>
/// <param name="Value">The number; null if there is none, or if it is beyond a decimal.</param>
/// <param name="Found">What stood there.</param>
[JsonConverter(typeof(JsonNumberConverter))]
[StructLayout(LayoutKind.Auto)]
internal readonly record struct JsonNumber(decimal? Value, JsonTokenType Found)
{
    internal JsonNumber(decimal value)
        : this(value, JsonTokenType.Number)
    {
    }

    internal bool IsAbsent => Found == JsonTokenType.None;
}
