using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Linq;
using ToolLedger.Records;

namespace ToolLedger.Calibration;

public sealed partial class CalibrationRegister
{
    /// <summary>The schema a stored register names.</summary>
    public const string Schema = "toolledger/calibration-register/1";

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
        var found = new List<RecordIssue>();
        issues = found;
        register = null;
        if (!RecordJson.TryRead(utf8Json, CalibrationJson.Default.CalibrationRegisterFile, Schema, JsonLimits.ForRecord(MaxRecordCount), found, out CalibrationRegisterFile? file))
        {
            return false;
        }

        var reader = new RecordReader(found);
        reader.RefuseUnknown(file, "$");
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
            else if (entry.Read(reader, place) is { } record)
            {
                record.AddIssues(place, found);
                records.Add(record);
            }
        }

        if (found.Count == 0)
        {
            FindRepeats(records, found);
        }

        register = found.Count == 0 ? new CalibrationRegister(Ordered(records)) : null;
        return register is not null;
    }

    /// <summary>Writes the register as JSON: indented UTF-8 in a fixed order of members and records.</summary>
    /// <returns>The bytes; the same records give the same bytes, in whatever order they were handed in.</returns>
    public byte[] ToJson() => RecordJson.Write(
        new CalibrationRegisterFile { Schema = new JsonText(Schema), Records = [.. Records.Select(CalibrationEntry.Of)] },
        CalibrationJson.Default.CalibrationRegisterFile);

    private static string PlaceOf(int index) => string.Create(CultureInfo.InvariantCulture, $"$.records[{index}]");
}
