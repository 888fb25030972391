using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Custody;

/// <summary>Custody entries as they were recorded, in any order; a stored file of them.</summary>
/// <remarks>Whether an entry takes effect is decided by a <see cref="CustodyRegister"/>. Immutable and thread-safe.</remarks>
public sealed class CustodyLog
{
    /// <summary>The schema a stored log names.</summary>
    public const string Schema = "toolledger/custody-log/1";

    /// <summary>The most entries of a log.</summary>
    public const int MaxEntryCount = 1_000_000;

    private static readonly JsonLimits Limits = JsonLimits.ForRecord(MaxEntryCount, 512 * 1024 * 1024);

    /// <summary>Makes a log.</summary>
    /// <param name="entries">The entries in any order, at most 1,000,000.</param>
    /// <exception cref="ArgumentNullException">The list or an entry is null.</exception>
    /// <exception cref="ArgumentException">There are more than 1,000,000.</exception>
    public CustodyLog(IEnumerable<CustodyEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        CustodyEntry[] copy = [.. entries];
        foreach (CustodyEntry entry in copy)
        {
            ArgumentNullException.ThrowIfNull(entry, nameof(entries));
        }

        Entries = copy.Length <= MaxEntryCount ? Array.AsReadOnly(copy) : throw new ArgumentException("A log holds at most 1,000,000 entries.", nameof(entries));
    }

    /// <summary>A log without entries.</summary>
    public static CustodyLog Empty { get; } = new([]);

    /// <summary>The entries in the order given.</summary>
    public IReadOnlyList<CustodyEntry> Entries { get; }

    /// <summary>Reads a stored log.</summary>
    /// <param name="utf8Json">The JSON; at most 512 MiB.</param>
    /// <returns>The log.</returns>
    /// <exception cref="RecordException">The bytes are not such a log; the exception lists every issue.</exception>
    public static CustodyLog Parse(ReadOnlySpan<byte> utf8Json) =>
        TryParse(utf8Json, out CustodyLog? log, out IReadOnlyList<RecordIssue> issues) ? log : throw new RecordException(issues);

    /// <summary>Reads a stored log, or says everything that is wrong with it.</summary>
    /// <param name="utf8Json">The JSON; at most 512 MiB.</param>
    /// <param name="log">The log, or null if it is refused.</param>
    /// <param name="issues">Every issue, with its place as a JSON path; empty if the log was read.</param>
    /// <returns>Whether the log was read. Bad bytes never raise an exception.</returns>
    public static bool TryParse(ReadOnlySpan<byte> utf8Json, [NotNullWhen(true)] out CustodyLog? log, out IReadOnlyList<RecordIssue> issues)
    {
        var found = new IssueList();
        issues = found;
        log = null;
        if (!RecordJson.TryReadDocument(utf8Json, Schema, Limits, found, out JsonDocument? document))
        {
            return false;
        }

        using (document)
        {
            var fields = new JsonFields(document.RootElement, "$", found);
            fields.IsThere("schema");
            var entries = new List<CustodyEntry>();
            foreach ((JsonElement item, string place) in fields.Items("entries", MaxEntryCount))
            {
                if (CustodyEntryJson.Read(item, place, found) is { } entry)
                {
                    entries.Add(entry);
                }
            }

            fields.End();
            log = found.Reported == 0 ? new CustodyLog(entries) : null;
        }

        return log is not null;
    }

    /// <summary>Writes the log as JSON: indented UTF-8, the entries in their order, the members of each sorted.</summary>
    /// <returns>The bytes; the same log gives the same bytes.</returns>
    public byte[] ToJson() => RecordJson.Write(writer =>
    {
        writer.WriteStartObject();
        writer.WriteString("schema"u8, Schema);
        writer.WriteStartArray("entries"u8);
        foreach (CustodyEntry entry in Entries)
        {
            using JsonDocument document = JsonDocument.Parse(entry.Canonical());
            document.RootElement.WriteTo(writer);
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
    });
}
