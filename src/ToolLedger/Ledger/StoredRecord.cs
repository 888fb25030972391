using System;
using System.Text.Json;
using ToolLedger.Custody;
using ToolLedger.Records;

namespace ToolLedger.Ledger;

/// <summary>A whole stored record of another room put into the ledger, such as an inventory sheet, a manifest or a policy, so that what a signed result was computed from lies beside it.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class StoredRecord : RecordEntry
{
    /// <summary>The word for this kind of fact.</summary>
    public const string KindName = "stored-record";

    private readonly byte[] record;

    private StoredRecord(byte[] record) => this.record = record;

    /// <inheritdoc/>
    public override string Kind => KindName;

    /// <summary>The schema that the record names.</summary>
    public required string RecordSchema { get; init; }

    /// <summary>The canonical bytes of the record.</summary>
    public ReadOnlyMemory<byte> Record => record;

    /// <summary>SHA-256 of <see cref="Record"/>: the digest under which results name their inputs.</summary>
    public Digest RecordDigest => Digest.Of(record);

    /// <summary>Puts a stored record into an entry.</summary>
    /// <param name="id">The id of the fact.</param>
    /// <param name="utf8Json">The record: a JSON object with a member "schema".</param>
    /// <param name="signature">Who puts it there.</param>
    /// <returns>The entry.</returns>
    /// <exception cref="ArgumentNullException">The signature is null.</exception>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    /// <exception cref="RecordException">The bytes are no JSON object, or name no schema.</exception>
    public static StoredRecord Of(EntryId id, ReadOnlySpan<byte> utf8Json, Signature signature)
    {
        ArgumentNullException.ThrowIfNull(signature);
        byte[] bytes = CanonicalJson.Canonicalize(utf8Json);
        using JsonDocument document = JsonDocument.Parse(bytes);
        return SchemaOf(document.RootElement) is { } schema
            ? new StoredRecord(bytes) { Id = id, At = signature.At, By = signature.By, Role = signature.Role, RecordSchema = schema }
            : throw new RecordException([new RecordIssue("$", new Reason(RecordRules.MissingMember, ("member", "schema")))]);
    }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WritePropertyName("record"u8);
        writer.WriteRawValue(record);
    }

    internal static StoredRecord? Read(EntryFields fields)
    {
        string? schema = fields.Element("record") is { } element ? SchemaOf(element) : null;
        if (schema is null && !fields.HasIssue)
        {
            fields.Report("record", new Reason(RecordRules.MissingMember, ("member", "schema")));
        }

        byte[] bytes = schema is null ? [] : fields.Canonical("record", fields.Element("record")!.Value);
        return fields.Made(f => new StoredRecord(bytes)
        {
            Id = f.Id,
            At = f.At,
            By = f.By,
            Role = f.Role,
            Witness = f.Witness,
            Where = f.Where,
            Remark = f.Remark,
            RecordSchema = schema ?? "",
        });
    }

    private static string? SchemaOf(JsonElement element) =>
        element.ValueKind == JsonValueKind.Object && element.TryGetProperty("schema", out JsonElement schema) && schema.ValueKind == JsonValueKind.String ? schema.GetString() : null;
}
