using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json;
using ToolLedger.Custody;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>A reconciliation as it was signed: the bytes of its result with the digests of all inputs, and who signed. It is never edited; what becomes known later is an amendment.</summary>
/// <remarks><see cref="RecordEntry.By"/> is the first who signed. Immutable and thread-safe.</remarks>
public sealed partial class SignedReconciliation : RecordEntry
{
    /// <summary>The word for this kind of fact.</summary>
    public const string KindName = "signed-reconciliation";

    /// <summary>The most signatures beside the first.</summary>
    public const int MaxSignatureCount = 16;

    private readonly byte[] result;
    private readonly SignedContent content;

    private SignedReconciliation(byte[] result, SignedContent content)
    {
        this.result = result;
        this.content = content;
    }

    /// <inheritdoc/>
    public override string Kind => KindName;

    /// <summary>Who signed beside <see cref="RecordEntry.By"/>; none by default.</summary>
    public IReadOnlyList<Signature> FurtherSignatures { get; private init; } = [];

    /// <summary>The canonical bytes of the result, as <see cref="ReconciliationResult.ToJson"/> wrote them.</summary>
    public ReadOnlyMemory<byte> Result => result;

    /// <summary>SHA-256 of <see cref="Result"/>.</summary>
    public Digest ResultDigest => Digest.Of(result);

    /// <summary>The kit.</summary>
    public KitId Kit => content.Kit;

    /// <summary>The revision it was checked against.</summary>
    public int Revision => content.Revision;

    /// <summary>The instant the answer is for.</summary>
    public DateTimeOffset AsOf => content.AsOf;

    /// <summary>What was concluded of the kit, in the words of <see cref="Words"/>.</summary>
    public string State => content.State;

    /// <summary>What was concluded of each line, in line order.</summary>
    public IReadOnlyList<SignedLine> Lines => content.Lines;

    /// <summary>The digests of everything it was computed from.</summary>
    public IReadOnlyList<InputDigest> Inputs => content.Inputs;

    /// <summary>The digest of the policy and the rules.</summary>
    public Digest PolicyDigest => content.PolicyDigest;

    /// <summary>The version of the library that computed it.</summary>
    public string LibraryVersion => content.LibraryVersion;

    /// <summary>The positive accountings that were signed.</summary>
    public IReadOnlyList<PositiveAccounting> Accountings => content.AccountingsOf(Id);

    /// <summary>Kit, revision, the instant the answer is for, the conclusion, and who signed. Each signature has a time of its own, which this line leaves out.</summary>
    /// <returns>Text for people.</returns>
    public override string ToString() => FormattableString.Invariant(
        $"{Kind} {Id.Value} of kit {Kit} revision {Revision} as of {RecordTime.ToText(AsOf)}: {State}; signed by {string.Join(", ", FurtherSignatures.Select(static one => one.By.Value).Prepend(By.Value))}");

    /// <summary>Signs a result.</summary>
    /// <param name="id">The id of the fact.</param>
    /// <param name="result">The result.</param>
    /// <param name="signatures">Who signs, at least one; the first is who makes the entry.</param>
    /// <returns>The signed reconciliation. Its time is that of the first signature, and never before the instant the answer is for.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The id is empty; nobody signs, more than 17 do, or somebody signed before the instant the answer is for, other than on the sheet that counts in it.</exception>
    public static SignedReconciliation Of(EntryId id, ReconciliationResult result, params IReadOnlyList<Signature> signatures)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(signatures);
        if (signatures.Count is 0 or > MaxSignatureCount + 1)
        {
            throw new ArgumentException("A reconciliation is signed by 1 to 17 persons.", nameof(signatures));
        }

        foreach (Signature signature in signatures)
        {
            // Whoever signed the sheet did so before the answer was worked out, and after everything that counts in it.
            if (signature.At < result.AsOf && !result.Signatures.Contains(signature))
            {
                throw new ArgumentException($"{signature.By} signed before the instant the answer is for.", nameof(signatures));
            }
        }

        byte[] bytes = result.ToJson();
        var issues = new IssueList();
        using JsonDocument document = JsonDocument.Parse(bytes);
        return new SignedReconciliation(bytes, SignedContent.Read(document.RootElement, "$", issues) ?? throw new RecordException(issues))
        {
            Id = id,
            At = signatures[0].At > result.AsOf ? signatures[0].At : result.AsOf,
            By = signatures[0].By,
            Role = signatures[0].Role,
            FurtherSignatures = Array.AsReadOnly<Signature>([.. signatures.Skip(1)]),
        };
    }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        if (FurtherSignatures.Count > 0)
        {
            writer.WriteStartArray("furtherSignatures"u8);
            foreach (Signature signature in FurtherSignatures)
            {
                writer.WriteStartObject();
                writer.WriteString("person"u8, signature.By.Value);
                writer.WriteString("at"u8, RecordTime.ToText(signature.At));
                writer.WriteIfGiven("role", signature.Role.Value);
                writer.WriteEndObject();
            }

            writer.WriteEndArray();
        }

        writer.WritePropertyName("result"u8);
        writer.WriteRawValue(result);
    }

    // Nobody signs for what is still to come: a look later than the answer, or an answer later than its signature, would account for a tool ahead of time.
    private static void CheckTimes(EntryFields fields, SignedContent content)
    {
        if (content.AsOf > fields.At)
        {
            fields.Report("at", new Reason(RecordRules.OutOfRange, ("range", "not before the instant of the answer, " + RecordTime.ToText(content.AsOf)), ("found", RecordTime.ToText(fields.At))));
        }

        foreach (SignedLine line in content.Lines.Where(line => line.OldestAt > content.AsOf))
        {
            fields.Report("result", new Reason(RecordRules.OutOfRange,
                ("range", $"evidence of line {SafeText.Excerpt(line.Label)} not after the instant of the answer, {RecordTime.ToText(content.AsOf)}"), ("found", RecordTime.ToText(line.OldestAt!.Value))));
        }
    }

    internal static SignedReconciliation? Read(EntryFields fields)
    {
        (byte[] bytes, SignedContent? content) = fields.Element("result") is { } element
            ? (fields.Canonical("result", element), SignedContent.Read(element, fields.PlaceOf("result"), fields.Issues))
            : ([], null);
        if (content is not null)
        {
            CheckTimes(fields, content);
        }

        return content is null ? fields.Made<SignedReconciliation>(static _ => null) : fields.Made(f => new SignedReconciliation(bytes, content)
        {
            Id = f.Id,
            At = f.At,
            By = f.By,
            Role = f.Role,
            Witness = f.Witness,
            Where = f.Where,
            Remark = f.Remark,
            FurtherSignatures = f.Signatures("furtherSignatures", MaxSignatureCount),
        });
    }
}
