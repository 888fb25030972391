using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Linq;
using ToolLedger.Records;

namespace ToolLedger.Tools;

/// <content>Stored form.</content>
public sealed partial class TagRegister
{
    /// <summary>Largest stored register, in bytes: 512 MiB.</summary>
    public const int MaxByteCount = 512 * 1024 * 1024;

    /// <summary>Kind and version of the stored form, its member <c>schema</c>.</summary>
    public const string Schema = "toolledger/tag-register/1";

    /// <summary>Reads a stored register.</summary>
    /// <param name="utf8Json">JSON as UTF-8, at most 512 MiB, see docs/schemas/tag-register.schema.json.</param>
    /// <returns>The register.</returns>
    /// <exception cref="RecordException">The register is refused; the exception lists every issue.</exception>
    public static TagRegister Parse(ReadOnlySpan<byte> utf8Json) =>
        TryParse(utf8Json, out TagRegister? register, out IReadOnlyList<RecordIssue> issues) ? register : throw new RecordException(issues);

    /// <summary>Reads a stored register if nothing speaks against it.</summary>
    /// <param name="utf8Json">JSON as UTF-8, at most 512 MiB, see docs/schemas/tag-register.schema.json.</param>
    /// <param name="register">The register, or null.</param>
    /// <param name="issues">Every issue, at most 10,001; empty when the register was read.</param>
    /// <returns>False if there are issues.</returns>
    public static bool TryParse(ReadOnlySpan<byte> utf8Json, [NotNullWhen(true)] out TagRegister? register, out IReadOnlyList<RecordIssue> issues)
    {
        var found = new IssueList();
        issues = found;
        register = null;
        if (!RecordJson.TryRead(utf8Json, ToolsJson.Default.TagRegisterFile, Schema, JsonLimits.ForRecord(MaxBindingCount, MaxByteCount), found, out TagRegisterFile? file))
        {
            return false;
        }

        var reader = new RecordReader(found);
        reader.RefuseUnknown(file, "$");
        if (file.Bindings is not { } records)
        {
            reader.Missing("$", "bindings");
            return false;
        }

        var bindings = new List<TagBinding>(records.Count);
        var indexes = new List<int>(records.Count);
        for (int i = 0; i < records.Count; i++)
        {
            string place = PlaceOf(i);
            if (reader.NotNull(records[i], place)?.Read(reader, place) is { } binding)
            {
                bindings.Add(binding);
                indexes.Add(i);
            }
        }

        // Bindings that could be read are checked too, so that one pass names everything.
        TagBinding[]? accepted = Check(bindings, index => indexes[index], found);
        BindingQuarantine[]? doubted = ReadQuarantines(reader, file.Quarantines ?? [], accepted);
        register = accepted is null || doubted is null || found.Reported > 0 ? null : new TagRegister((accepted, doubted));
        return register is not null;
    }

    /// <summary>Writes the stored form: UTF-8, indented, bindings and quarantines ordered by tag and start.</summary>
    /// <returns>JSON that <see cref="Parse"/> reads back.</returns>
    public byte[] ToJson() => RecordJson.Write(
        new TagRegisterFile
        {
            Schema = new JsonText(Schema),
            Bindings = [.. _bindings.Select(TagBindingRecord.Of)],
            Quarantines = Quarantines.Count == 0 ? null : [.. Quarantines.Select(BindingQuarantineRecord.Of)],
        },
        ToolsJson.Default.TagRegisterFile);

    private static BindingQuarantine[]? ReadQuarantines(RecordReader reader, List<BindingQuarantineRecord?> records, TagBinding[]? bindings)
    {
        if (records.Count > MaxQuarantineCount)
        {
            reader.Report("$.quarantines", new Reason(RecordRules.TooLarge,
                ("limit", MaxQuarantineCount.ToString("N0", CultureInfo.InvariantCulture)), ("what", "quarantines")));
            return null;
        }

        var quarantines = new List<BindingQuarantine>(records.Count);
        var indexes = new List<int>(records.Count);
        for (int i = 0; i < records.Count; i++)
        {
            string place = QuarantinePlace(i);
            if (reader.NotNull(records[i], place)?.Read(reader, place) is { } quarantine)
            {
                quarantines.Add(quarantine);
                indexes.Add(i);
            }
        }

        // Without bindings to hold them against, nothing can be said of them beyond their own members.
        return bindings is null ? null : CheckQuarantines(bindings, quarantines, index => indexes[index], reader.Issues);
    }
}
