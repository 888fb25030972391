using System;
using System.Collections.Generic;
using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Custody;

/// <summary>A recorded refusal: which entry was refused, when, and by which rules. It moves nothing.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class EntryRefusal : RecordEntry
{
    /// <summary>The word for this kind of fact.</summary>
    public const string KindName = "refusal";

    /// <summary>The most rules of one refusal.</summary>
    public const int MaxCodeCount = 10_001;

    /// <inheritdoc/>
    public override string Kind => KindName;

    /// <summary>The entry that was refused.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required EntryId Refused { get; init => field = Given(value, value.IsEmpty, "A refusal needs the entry that was refused."); }

    /// <summary>What kind of entry that was.</summary>
    /// <exception cref="ArgumentException">The text is not 1 to 64 printable characters.</exception>
    public required string RefusedKind { get; init => field = RecordText.Require(value, IdText.MaxLength, nameof(value)); }

    /// <summary>The digest of that entry; empty (the default) if not stated.</summary>
    public Digest RefusedDigest { get; init; }

    /// <summary>The codes of the rules that spoke against it; at least one.</summary>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    /// <exception cref="ArgumentException">The list is empty, too long, or holds an empty code.</exception>
    public required IReadOnlyList<string> Codes
    {
        get;
        init => field = value is { Count: > 0 } ? Listed(value, MaxCodeCount, string.IsNullOrEmpty)
            : value is null ? throw new ArgumentNullException(nameof(value)) : throw new ArgumentException("A refusal names at least one rule.", nameof(value));
    }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WriteString("refused"u8, Refused.Value);
        writer.WriteString("refusedKind"u8, RefusedKind);
        writer.WriteIfGiven("refusedDigest", RefusedDigest.IsEmpty ? null : RefusedDigest.ToString());
        writer.WriteTexts("codes", Codes);
    }

    internal static EntryRefusal? Read(EntryFields fields) => fields.Made(static f => new EntryRefusal
    {
        Id = f.Id,
        At = f.At,
        By = f.By,
        Role = f.Role,
        Witness = f.Witness,
        Where = f.Where,
        Remark = f.Remark,
        Refused = f.Entry("refused"),
        RefusedKind = f.Text("refusedKind"),
        RefusedDigest = f.Digest("refusedDigest"),
        Codes = f.SomeTexts("codes", MaxCodeCount),
    });
}
