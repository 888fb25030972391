using System.Collections.Generic;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace ToolLedger.Records;

/// <summary>Base of the types that mirror JSON objects: keeps what nobody declared, so that each member becomes an issue.</summary>
internal abstract class JsonRecord
{
    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Unknown { get; set; }

    /// <summary>True if a member that holds an object or a list was given as null, which is not the same as its absence.</summary>
    internal bool HasNull { get; private set; }

    /// <summary>For the setters of members that hold an object or a list.</summary>
    protected T? Note<T>(T? value)
        where T : class
    {
        HasNull |= value is null;
        return value;
    }
}
