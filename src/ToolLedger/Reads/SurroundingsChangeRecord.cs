using System;
using ToolLedger.Records;

namespace ToolLedger.Reads;

/// <summary>A change of the surroundings as stored in a presentation: {"at", "by", "what"}.</summary>
internal sealed class SurroundingsChangeRecord : JsonRecord
{
    public JsonText At { get; set; }

    public JsonText By { get; set; }

    public JsonText What { get; set; }

    internal static SurroundingsChangeRecord Of(SurroundingsChange change) => new()
    {
        At = new JsonText(RecordTime.ToText(change.At)),
        By = new JsonText(change.By.Value),
        What = new JsonText(change.What),
    };

    /// <summary>Null and issues if a member is missing or wrong.</summary>
    internal SurroundingsChange? Read(RecordReader reader, string place)
    {
        reader.RefuseUnknown(this, place);
        DateTimeOffset? at = reader.Time(At, place, "at");
        string? by = reader.Text(By, place, "by", IdText.MaxLength);
        string? what = reader.Text(What, place, "what", SurroundingsChange.MaxWhatLength);
        return at is null || by is null || what is null ? null : new SurroundingsChange(at.Value, new PersonId(by), what);
    }
}
