using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.Linq;
using ToolLedger.Records;

namespace ToolLedger.Presence;

/// <content>Stored form.</content>
public sealed partial class TagHistoryRegister
{
    /// <summary>Largest stored register, in bytes: 512 MiB.</summary>
    public const int MaxByteCount = 512 * 1024 * 1024;

    /// <summary>Kind and version of the stored form, its member <c>schema</c>.</summary>
    public const string Schema = "toolledger/tag-history/1";

    /// <summary>Reads a stored register.</summary>
    /// <param name="utf8Json">JSON as UTF-8, at most 512 MiB, see docs/schemas/tag-history.schema.json.</param>
    /// <returns>The register.</returns>
    /// <exception cref="RecordException">The register is refused; the exception lists every issue.</exception>
    public static TagHistoryRegister Parse(ReadOnlySpan<byte> utf8Json) =>
        TryParse(utf8Json, out TagHistoryRegister? register, out IReadOnlyList<RecordIssue> issues) ? register : throw new RecordException(issues);

    /// <summary>Reads a stored register if nothing speaks against it.</summary>
    /// <param name="utf8Json">JSON as UTF-8, at most 512 MiB, see docs/schemas/tag-history.schema.json.</param>
    /// <param name="register">The register, or null.</param>
    /// <param name="issues">Every issue, at most 10,001; empty when the register was read.</param>
    /// <returns>False if there are issues.</returns>
    public static bool TryParse(ReadOnlySpan<byte> utf8Json, [NotNullWhen(true)] out TagHistoryRegister? register, out IReadOnlyList<RecordIssue> issues)
    {
        var found = new IssueList();
        issues = found;
        register = null;
        if (!RecordJson.TryRead(
            utf8Json, PresenceJson.Default.TagHistoryFile, Schema, JsonLimits.ForRecord(MaxEntryCount, MaxByteCount), found, out TagHistoryFile? file))
        {
            return false;
        }

        var reader = new RecordReader(found);
        reader.RefuseUnknown(file, "$");
        DateTimeOffset? asOf = reader.Time(file.AsOf, "$", "asOf");
        if (file.Tags is null)
        {
            reader.Missing("$", "tags");
        }

        List<TagHistoryRecord?> records = file.Tags ?? [];
        var entries = new List<TagHistoryEntry>(records.Count);
        for (int i = 0; i < records.Count; i++)
        {
            string place = PlaceOf(i);
            if (reader.NotNull(records[i], place)?.ReadEntry(reader, place) is { } entry)
            {
                entries.Add(entry);
            }
        }

        if (found.Reported == 0)
        {
            Check([.. entries], found);
        }

        register = found.Reported > 0 ? null : new TagHistoryRegister(asOf!.Value, entries);
        return register is not null;
    }

    /// <summary>Writes the stored form: UTF-8, indented, entries in order of their tags.</summary>
    /// <returns>JSON that <see cref="Parse"/> reads back.</returns>
    public byte[] ToJson() => RecordJson.Write(
        new TagHistoryFile { Schema = new JsonText(Schema), AsOf = new JsonText(RecordTime.ToText(AsOf)), Tags = [.. Entries.Select(TagHistoryRecord.Of)] },
        PresenceJson.Default.TagHistoryFile);
}
