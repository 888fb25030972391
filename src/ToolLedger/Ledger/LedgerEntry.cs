using System;
using System.Buffers;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.Text.Json;
using ToolLedger.Reads;
using ToolLedger.Records;

namespace ToolLedger.Ledger;

/// <summary>One fact in the ledger, with when and where it was recorded. Never changed and never removed; what was wrong gets a further entry.</summary>
/// <remarks>
/// Two entries hold the same fact if <see cref="ContentDigest"/> is the same, whenever and wherever each was recorded. Entries name persons by id only. Immutable and thread-safe.
/// </remarks>
public sealed class LedgerEntry
{
    /// <summary>The schema a stored entry names.</summary>
    public const string Schema = "toolledger/ledger-entry/1";

    /// <summary>The largest stored entry, in bytes: 64 MiB.</summary>
    public const int MaxByteCount = JsonLimits.RecordByteCount;

    private byte[]? canonical;

    /// <summary>Makes an entry.</summary>
    /// <param name="content">The fact.</param>
    /// <param name="recordedAt">When it was recorded, in the years 1970 to 2999.</param>
    /// <param name="station">Where it was recorded; the default value means "not stated".</param>
    /// <exception cref="ArgumentNullException">The fact is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The year is outside 1970 to 2999.</exception>
    public LedgerEntry(RecordEntry content, DateTimeOffset recordedAt, StationId station = default)
    {
        ArgumentNullException.ThrowIfNull(content);
        Content = content;
        RecordedAt = RecordTime.Require(recordedAt, nameof(recordedAt));
        Station = station;
    }

    /// <summary>The fact.</summary>
    public RecordEntry Content { get; }

    /// <summary>When it was recorded.</summary>
    public DateTimeOffset RecordedAt { get; }

    /// <summary>Where it was recorded; empty if not stated.</summary>
    public StationId Station { get; }

    /// <summary>The id of the fact.</summary>
    public EntryId Id => Content.Id;

    /// <summary>The word for what kind of fact it is.</summary>
    public string Kind => Content.Kind;

    /// <summary>When it happened.</summary>
    public DateTimeOffset OccurredAt => Content.At;

    /// <summary>The person who says so.</summary>
    public PersonId Actor => Content.By;

    /// <summary>A second person who was there; empty if none is recorded.</summary>
    public PersonId Witness => Content.Witness;

    /// <summary>What else was said of it; null if nothing.</summary>
    public string? Reason => Content.Remark;

    /// <summary>SHA-256 of the canonical form of the fact alone.</summary>
    public Digest ContentDigest => Content.Digest;

    /// <summary>SHA-256 of the canonical form of the whole entry: what a proof of the record can rest on.</summary>
    public Digest Digest => Digest.Of(Canonical());

    /// <summary>Reads a stored entry.</summary>
    /// <param name="utf8Json">The JSON; at most 64 MiB.</param>
    /// <returns>The entry.</returns>
    /// <exception cref="RecordException">The bytes are not such an entry; the exception lists every issue.</exception>
    public static LedgerEntry Parse(ReadOnlySpan<byte> utf8Json) =>
        TryParse(utf8Json, out LedgerEntry? entry, out IReadOnlyList<RecordIssue> issues) ? entry : throw new RecordException(issues);

    /// <summary>Reads a stored entry, or says everything that is wrong with it.</summary>
    /// <param name="utf8Json">The JSON; at most 64 MiB.</param>
    /// <param name="entry">The entry, or null if it is refused.</param>
    /// <param name="issues">Every issue, with its place as a JSON path; empty if the entry was read.</param>
    /// <returns>Whether the entry was read. Bad bytes never raise an exception.</returns>
    public static bool TryParse(ReadOnlySpan<byte> utf8Json, [NotNullWhen(true)] out LedgerEntry? entry, out IReadOnlyList<RecordIssue> issues)
    {
        var found = new IssueList();
        issues = found;
        entry = null;

        // Results inside name their inputs as members, so the number of members is not that of a plain record.
        if (!RecordJson.TryReadDocument(utf8Json, Schema, new JsonLimits(MaxByteCount), found, out JsonDocument? document))
        {
            return false;
        }

        using (document)
        {
            var fields = new JsonFields(document.RootElement, "$", found);
            fields.IsThere("schema");
            DateTimeOffset? recordedAt = fields.RequiredTime("recordedAt");
            string? station = fields.Text("station", null, IdText.MaxLength);
            RecordEntry? content = fields.Require("content") && fields.TryGet("content", out JsonElement element)
                ? ContentJson.Read(element, "$.content", found)
                : null;
            fields.End();
            entry = found.Reported > 0 || content is null ? null : new LedgerEntry(content, recordedAt!.Value, station is null ? default : new StationId(station));
        }

        return entry is not null;
    }

    /// <summary>Writes the entry as canonical JSON (RFC 8785), on one line without an end.</summary>
    /// <returns>The bytes; the same entry gives the same bytes.</returns>
    public byte[] ToJson() => [.. Canonical()];

    /// <summary>The fact and when it was recorded.</summary>
    /// <returns>Text for people.</returns>
    public override string ToString() => $"{Content}, recorded {RecordTime.ToText(RecordedAt)}";

    private byte[] Canonical() => canonical ??= Write();

    private byte[] Write()
    {
        var buffer = new ArrayBufferWriter<byte>(512);
        using (var writer = new Utf8JsonWriter(buffer))
        {
            // In the order of the canonical form already: content, recordedAt, schema, station.
            writer.WriteStartObject();
            writer.WritePropertyName("content"u8);
            writer.WriteRawValue(Content.Canonical(), skipInputValidation: true);
            writer.WriteString("recordedAt"u8, RecordTime.ToText(RecordedAt));
            writer.WriteString("schema"u8, Schema);
            writer.WriteIfGiven("station", Station.Value);
            writer.WriteEndObject();
        }

        return CanonicalJson.Canonicalize(buffer.WrittenSpan);
    }
}
