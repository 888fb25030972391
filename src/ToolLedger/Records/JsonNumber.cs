using System.Runtime.InteropServices;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace ToolLedger.Records;

/// <summary>A member that should be a number: absent, a number, or something else, which is an issue and not an exception.</summary>
/// <param name="Value">The number, exactly as written; null if there is none, or if a decimal cannot keep it without rounding.</param>
/// <param name="Found">What stood there.</param>
/// <param name="Written">An excerpt of a number that has no value; null otherwise.</param>
[JsonConverter(typeof(JsonNumberConverter))]
[StructLayout(LayoutKind.Auto)]
internal readonly record struct JsonNumber(decimal? Value, JsonTokenType Found, string? Written = null)
{
    internal JsonNumber(decimal value)
        : this(value, JsonTokenType.Number)
    {
    }

    internal bool IsAbsent => Found == JsonTokenType.None;
}
