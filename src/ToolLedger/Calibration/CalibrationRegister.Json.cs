using System.Buffers;
using System.Globalization;
using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Calibration;

public sealed partial class CalibrationRegister
{
    /// <summary>The schema a stored register names.</summary>
    public const string Schema = "toolledger/calibration-register/1";

    /// <summary>Writes the register as JSON: indented UTF-8 in a fixed order of members and records.</summary>
    /// <returns>The bytes; the same records give the same bytes, in whatever order they were handed in.</returns>
    public byte[] ToJson()
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var writer = new Utf8JsonWriter(buffer, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            writer.WriteStartObject();
            writer.WriteString("schema", Schema);
            writer.WriteStartArray("records");
            foreach (CalibrationRecord record in Records)
            {
                Write(writer, record);
            }

            writer.WriteEndArray();
            writer.WriteEndObject();
        }

        return buffer.WrittenSpan.ToArray();
    }

    private static void Write(Utf8JsonWriter writer, CalibrationRecord record)
    {
        writer.WriteStartObject();
        writer.WriteString("tool", record.Tool.Value);
        writer.WriteString("calibratedOn", CalibrationRecord.Text(record.CalibratedOn));
        if (record.DueOn is { } day)
        {
            writer.WriteString("dueOn", CalibrationRecord.Text(day));
        }

        if (record.DueMonth is { } month)
        {
            writer.WriteString("dueMonth", month.ToString("yyyy-MM", CultureInfo.InvariantCulture));
        }

        if (record.IntervalMonths is { } months)
        {
            writer.WriteNumber("intervalMonths", months);
        }

        writer.WriteString("recordedAt", RecordTime.ToText(record.RecordedAt));
        if (!record.RecordedBy.IsEmpty)
        {
            writer.WriteString("recordedBy", record.RecordedBy.Value);
        }

        if (record.Certificate is { } certificate)
        {
            writer.WriteString("certificate", certificate);
        }

        writer.WriteEndObject();
    }
}
