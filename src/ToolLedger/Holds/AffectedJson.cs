using System.Collections.Generic;
using System.Text.Json;
using ToolLedger.Custody;
using ToolLedger.Records;

namespace ToolLedger.Holds;

/// <summary>Lists of things affected, as stored: [{"equipment"?, "job"?, "place"?}].</summary>
internal static class AffectedJson
{
    internal static void Write(Utf8JsonWriter writer, string name, IReadOnlyList<AffectedThing> things)
    {
        if (things.Count == 0)
        {
            return;
        }

        writer.WriteStartArray(name);
        foreach (AffectedThing thing in things)
        {
            writer.WriteStartObject();
            writer.WriteIfGiven("equipment", thing.Equipment.Value);
            writer.WriteIfGiven("job", thing.Job.Value);
            writer.WriteIfGiven("place", thing.Place.Value);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    internal static AffectedThing[] Read(EntryFields fields, string name)
    {
        var things = new List<AffectedThing>();
        foreach (JsonFields item in fields.Objects(name, AffectedThing.MaxCount))
        {
            var thing = new AffectedThing(
                item.Text("equipment", null, IdText.MaxLength) is { } equipment ? new EquipmentId(equipment) : default,
                item.Text("job", null, IdText.MaxLength) is { } job ? new JobId(job) : default,
                item.Text("place", null, IdText.MaxLength) is { } place ? new Place(place) : default);
            item.End();
            if (thing.IsEmpty)
            {
                fields.Report(name, new Reason(RecordRules.MissingMember, ("member", "equipment")));
            }
            else
            {
                things.Add(thing);
            }
        }

        return [.. things];
    }
}
