using ToolLedger.Records;

namespace ToolLedger.Tools;

/// <summary>An external id as stored: {"system", "value"}.</summary>
internal sealed class ExternalIdRecord : JsonRecord
{
    public JsonText System { get; set; }

    public JsonText Value { get; set; }

    internal static ExternalIdRecord Of(ExternalId id) => new() { System = new JsonText(id.System), Value = new JsonText(id.Value) };

    internal ExternalId? Read(RecordReader reader, string place)
    {
        reader.RefuseUnknown(this, place);
        string? system = reader.Text(System, place, "system", IdText.MaxLength);
        string? value = reader.Text(Value, place, "value", IdText.MaxLength);
        return system is null || value is null ? null : new ExternalId(system, value);
    }
}
