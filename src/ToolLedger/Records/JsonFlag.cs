using System.Runtime.InteropServices;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace ToolLedger.Records;

/// <summary>A member that should be true or false: absent, one of them, or something else, which is an issue and not an exception.</summary>
[JsonConverter(typeof(JsonFlagConverter))]
[StructLayout(LayoutKind.Auto)]
internal readonly record struct JsonFlag(bool Value, JsonTokenType Found)
{
    internal bool IsAbsent => Found == JsonTokenType.None;

    /// <summary>A member that is written only when it is true, because false is what its absence means.</summary>
    internal static JsonFlag WhenTrue(bool value) => value ? new JsonFlag(true, JsonTokenType.True) : default;
}
