using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Linq;
using System.Text.Json;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Calibration;

public sealed partial class CalibrationRegister
{
    /// <summary>The schema that a stored register with events, functions or results names.</summary>
    public const string Schema = "toolledger/calibration-register/2";

    /// <summary>The schema of the first form, which is still read, and written where it holds everything there is.</summary>
    public const string FirstSchema = "toolledger/calibration-register/1";

    /// <summary>Reads a stored register.</summary>
    /// <param name="utf8Json">The JSON; at most 64 MiB.</param>
    /// <returns>The register.</returns>
    /// <exception cref="RecordException">The bytes are not such a register; the exception lists every issue.</exception>
    public static CalibrationRegister Parse(ReadOnlySpan<byte> utf8Json) =>
        TryParse(utf8Json, out CalibrationRegister? register, out IReadOnlyList<RecordIssue> issues) ? register : throw new RecordException(issues);

    /// <summary>Reads a stored register, or says everything that is wrong with it.</summary>
    /// <param name="utf8Json">The JSON; at most 64 MiB.</param>
    /// <param name="register">The register, or null if it is refused.</param>
    /// <param name="issues">Every issue, with its place as a JSON path; empty if the register was read.</param>
    /// <returns>Whether the register was read. Bad bytes never raise an exception.</returns>
    public static bool TryParse(ReadOnlySpan<byte> utf8Json, [NotNullWhen(true)] out CalibrationRegister? register, out IReadOnlyList<RecordIssue> issues)
    {
        var found = new IssueList();
        issues = found;
        register = null;
        if (!RecordJson.TryRead(utf8Json, CalibrationJson.Default.CalibrationRegisterFile, [Schema, FirstSchema], JsonLimits.ForRecord(MaxRecordCount), found, out CalibrationRegisterFile? file))
        {
            return false;
        }

        bool isFirstForm = string.Equals(file.Schema.Value, FirstSchema, StringComparison.Ordinal);
        var reader = new RecordReader(found);
        reader.RefuseUnknown(file, "$");
        if (isFirstForm && file.Events is not null)
        {
            reader.Report("$", new Reason(RecordRules.UnknownMember, ("member", "events")));
            return false;
        }

        List<CalibrationEvent> events = ReadEvents(file.Events ?? [], found);
        HashSet<ToolId> planned = Planned(events);
        if (file.Records is null)
        {
            reader.Missing("$", "records");
            return false;
        }

        var records = new List<CalibrationRecord>(file.Records.Count);
        for (int index = 0; index < file.Records.Count; index++)
        {
            string place = PlaceOf(index);
            if (file.Records[index] is not { } entry)
            {
                reader.Report(place, new Reason(RecordRules.WrongType, ("expected", "an object"), ("found", "null")));
            }
            else if (entry.Read(reader, place, isFirstForm) is { } record)
            {
                record.AddIssues(place, found, planned.Contains(record.Tool));
                records.Add(record);
            }
        }

        if (found.Reported == 0)
        {
            FindRepeats(records, found);
            FindRepeats(events, found);
            FindSilentClearings(events, found);
        }

        register = found.Reported == 0 ? new CalibrationRegister(Ordered(records), Ordered(events)) : null;
        return register is not null;
    }

    /// <summary>Writes the register as JSON: indented UTF-8 in a fixed order of members, records and events. What the first form can hold is written in it.</summary>
    /// <returns>The bytes; the same records and events give the same bytes, in whatever order they were handed in.</returns>
    public byte[] ToJson() => IsFirstForm(Records, Events)
        ? RecordJson.Write(
            new CalibrationRegisterFile { Schema = new JsonText(FirstSchema), Records = [.. Records.Select(CalibrationEntry.Of)] },
            CalibrationJson.Default.CalibrationRegisterFile)
        : RecordJson.Write(writer =>
        {
            writer.WriteStartObject();
            writer.WriteString("schema", Schema);
            writer.WriteStartArray("records");
            foreach (CalibrationRecord record in Records)
            {
                JsonSerializer.Serialize(writer, CalibrationEntry.Of(record), CalibrationJson.Default.CalibrationEntry);
            }

            writer.WriteEndArray();
            writer.WriteStartArray("events");
            foreach (CalibrationEvent one in Events)
            {
                one.Write(writer);
            }

            writer.WriteEndArray();
            writer.WriteEndObject();
        });

    private static bool IsFirstForm(IReadOnlyList<CalibrationRecord> records, IReadOnlyList<CalibrationEvent> events) => events.Count == 0 && records.All(static one => one.IsPlain);

    private static List<CalibrationEvent> ReadEvents(IReadOnlyList<JsonElement> elements, IssueList issues)
    {
        var events = new List<CalibrationEvent>(elements.Count);
        for (int index = 0; index < elements.Count; index++)
        {
            if (EventFields.Read(elements[index], EventPlaceOf(index), issues) is { } one)
            {
                events.Add(one);
            }
        }

        return events;
    }

    private static string EventPlaceOf(int index) => string.Create(CultureInfo.InvariantCulture, $"$.events[{index}]");

    private static string PlaceOf(int index) => string.Create(CultureInfo.InvariantCulture, $"$.records[{index}]");
}
