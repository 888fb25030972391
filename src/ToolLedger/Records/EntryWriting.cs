using System;
using System.Collections.Generic;
using System.Text.Json;

namespace ToolLedger.Records;

/// <summary>Writes the members of recorded facts; what is empty is left out.</summary>
internal static class EntryWriting
{
    internal static void WriteIfGiven(this Utf8JsonWriter writer, string name, string? text)
    {
        if (!string.IsNullOrEmpty(text))
        {
            writer.WriteString(name, text);
        }
    }

    internal static void WriteTime(this Utf8JsonWriter writer, string name, DateTimeOffset? time) =>
        writer.WriteIfGiven(name, time is { } given ? RecordTime.ToText(given) : null);

    internal static void WriteFlag(this Utf8JsonWriter writer, string name, bool flag)
    {
        if (flag)
        {
            writer.WriteBoolean(name, true);
        }
    }

    internal static void WriteTexts(this Utf8JsonWriter writer, string name, IEnumerable<string> texts)
    {
        bool isStarted = false;
        foreach (string text in texts)
        {
            if (!isStarted)
            {
                writer.WriteStartArray(name);
                isStarted = true;
            }

            writer.WriteStringValue(text);
        }

        if (isStarted)
        {
            writer.WriteEndArray();
        }
    }

    internal static void WriteNumbers(this Utf8JsonWriter writer, string name, IReadOnlyList<int> numbers)
    {
        if (numbers.Count == 0)
        {
            return;
        }

        writer.WriteStartArray(name);
        foreach (int number in numbers)
        {
            writer.WriteNumberValue(number);
        }

        writer.WriteEndArray();
    }

    internal static void WriteSignature(this Utf8JsonWriter writer, string name, Signature? signature)
    {
        if (signature is null)
        {
            return;
        }

        writer.WriteStartObject(name);
        writer.WriteString("person"u8, signature.By.Value);
        writer.WriteString("at"u8, RecordTime.ToText(signature.At));
        writer.WriteIfGiven("role", signature.Role.Value);
        writer.WriteEndObject();
    }

    internal static void WriteQuantity(this Utf8JsonWriter writer, string name, Quantity quantity)
    {
        writer.WriteStartObject(name);
        writer.WriteNumber("amount"u8, quantity.Amount);
        writer.WriteString("unit"u8, quantity.Unit.Value);
        writer.WriteEndObject();
    }

    internal static void WriteReasons(this Utf8JsonWriter writer, string name, IEnumerable<Reason> reasons)
    {
        writer.WriteStartArray(name);
        foreach (Reason reason in reasons)
        {
            writer.WriteStartObject();
            writer.WriteString("code"u8, reason.Code);
            foreach (KeyValuePair<string, string> value in reason.Values)
            {
                writer.WriteString("value." + value.Key, value.Value);
            }

            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }
}
