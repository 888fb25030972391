using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json;
using ToolLedger.Custody;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Ledger;

/// <summary>What a signed reconciliation would say with what became known later. The signed result stays as it is, byte for byte; nothing is lifted, closed or released by this.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class Amendment : RecordEntry
{
    /// <summary>The word for this kind of fact.</summary>
    public const string KindName = "amendment";

    private const int MaxDifferenceCount = 100_000;
    private const int MaxDifferenceLength = 4000;

    private readonly byte[] result;

    private Amendment(byte[] result) => this.result = result;

    /// <inheritdoc/>
    public override string Kind => KindName;

    /// <summary>The signed reconciliation it amends.</summary>
    public required EntryId Amends { get; init; }

    /// <summary>The digest of the result that was signed.</summary>
    public required Digest SignedDigest { get; init; }

    /// <summary>Why there is something to add, 1 to 500 printable characters.</summary>
    public required string Reason { get; init; }

    /// <summary>What differs, in English sentences with their codes.</summary>
    public required IReadOnlyList<string> Differences { get; init; }

    /// <summary>The canonical bytes of the later result.</summary>
    public ReadOnlyMemory<byte> Result => result;

    /// <summary>Amends a signed reconciliation.</summary>
    /// <param name="id">The id of the fact.</param>
    /// <param name="signOff">What was signed.</param>
    /// <param name="later">The result for the same kit and instant, with what is known now.</param>
    /// <param name="signature">Who amends.</param>
    /// <param name="reason">Why, 1 to 500 printable characters.</param>
    /// <returns>The amendment, or null if the later result says nothing else.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The later result is for another kit, revision or instant; the reason breaks its rule; the amendment is signed before the sign-off.</exception>
    public static Amendment? Of(EntryId id, SignedReconciliation signOff, ReconciliationResult later, Signature signature, string reason)
    {
        ArgumentNullException.ThrowIfNull(signOff);
        ArgumentNullException.ThrowIfNull(later);
        ArgumentNullException.ThrowIfNull(signature);
        RecordText.Require(reason, MaxRemarkLength, nameof(reason));
        if (later.Manifest.Id != signOff.Kit || later.Manifest.Revision != signOff.Revision || later.AsOf != signOff.AsOf)
        {
            throw new ArgumentException("An amendment answers for the kit, revision and instant that were signed.", nameof(later));
        }

        if (signature.At < signOff.At)
        {
            throw new ArgumentException("An amendment comes after what it amends.", nameof(signature));
        }

        byte[] bytes = later.ToJson();
        return bytes.AsSpan().SequenceEqual(signOff.Result.Span) ? null : new Amendment(bytes)
        {
            Id = id,
            At = signature.At,
            By = signature.By,
            Role = signature.Role,
            Amends = signOff.Id,
            SignedDigest = signOff.ResultDigest,
            Reason = reason,
            Differences = [.. signOff.DifferencesTo(later).Select(static difference => $"{difference} ({difference.Code})")],
        };
    }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WriteString("amends"u8, Amends.Value);
        writer.WriteString("signedDigest"u8, SignedDigest.ToString());
        writer.WriteString("reason"u8, Reason);
        writer.WriteTexts("differences", Differences);
        writer.WritePropertyName("result"u8);
        writer.WriteRawValue(result);
    }

    internal static Amendment? Read(EntryFields fields)
    {
        byte[] bytes = fields.Element("result") is { ValueKind: JsonValueKind.Object } element ? fields.Canonical("result", element) : [];
        if (bytes.Length == 0 && !fields.HasIssue)
        {
            fields.Report("result", new Records.Reason(RecordRules.WrongType, ("expected", "an object"), ("found", "another value")));
        }

        return fields.Made(f => new Amendment(bytes)
        {
            Id = f.Id,
            At = f.At,
            By = f.By,
            Role = f.Role,
            Witness = f.Witness,
            Where = f.Where,
            Remark = f.Remark,
            Amends = f.Entry("amends"),
            SignedDigest = f.Digest("signedDigest"),
            Reason = f.Text("reason", MaxRemarkLength),
            Differences = f.Texts("differences", MaxDifferenceCount, MaxDifferenceLength),
        });
    }
}
