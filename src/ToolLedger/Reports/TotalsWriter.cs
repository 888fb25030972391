using System.Linq;
using System.Text.Json;
using ToolLedger.Kits;

namespace ToolLedger.Reports;

/// <summary>Writes what a list adds up to as JSON.</summary>
internal sealed class TotalsWriter(Utf8JsonWriter writer)
{
    internal void Write(ManifestTotals totals)
    {
        writer.WriteStartObject("totals");
        writer.WritePropertyName("kit");
        WriteTotal(totals.Kit);
        writer.WriteStartArray("places");
        foreach (ManifestTotal total in totals.Locations)
        {
            WriteTotal(total);
        }

        writer.WriteEndArray();
        writer.WriteStartArray("notAddedUp");
        foreach (string description in totals.Unresolved.Select(static line => line.Description))
        {
            writer.WriteStringValue(description);
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private void WriteTotal(ManifestTotal total)
    {
        writer.WriteStartObject();
        if (total.Location is { } location)
        {
            writer.WriteString("location", location);
        }

        writer.WriteNumber("lines", total.LineCount);
        writer.WriteNumber("taggedLines", total.TaggedLineCount);
        writer.WriteNumber("peopleLines", total.PeopleLineCount);
        writer.WriteNumber("pieces", total.PieceCount);
        writer.WriteStartArray("items");
        foreach (ItemTotal item in total.Items)
        {
            writer.WriteStartObject();
            writer.WriteNumber("amount", item.Amount);
            writer.WriteString("unit", item.Unit.Value);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
    }
}
