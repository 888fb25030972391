using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>What is looked up in the bytes of a signed result.</summary>
internal sealed record SignedContent(
    KitId Kit, int Revision, DateTimeOffset AsOf, string State, IReadOnlyList<SignedLine> Lines, IReadOnlyList<InputDigest> Inputs, Digest PolicyDigest, string LibraryVersion)
{
    private const int MaxLineCount = 100_000;
    private const int MaxTextLength = 1000;

    /// <summary>Null and issues if it is no such result. Members that are not looked up are kept in the bytes and not judged here.</summary>
    internal static SignedContent? Read(JsonElement element, string place, IssueList issues)
    {
        int before = issues.Reported;
        var fields = new JsonFields(element, place, issues);
        if (fields.RequiredText("schema", MaxTextLength) is { } schema && !string.Equals(schema, ReconciliationResult.Schema, StringComparison.Ordinal))
        {
            fields.Report("schema", new Reason(RecordRules.SchemaVersion, ("expected", ReconciliationResult.Schema), ("found", SafeText.Excerpt(schema))));
        }

        string? kit = fields.RequiredText("kit", IdText.MaxLength);
        int revision = fields.Require("revision") ? fields.Int32("revision", 1, 1, KitManifest.MaxRevision) : 1;
        DateTimeOffset? asOf = fields.RequiredTime("asOf");
        string? state = fields.RequiredText("state", MaxTextLength);
        Digest policy = ReadDigest(fields, "policy");
        string? version = fields.RequiredText("libraryVersion", MaxTextLength);
        fields.Require("lines");
        SignedLine[] lines = [.. fields.Objects("lines", MaxLineCount).Select(ReadLine).OfType<SignedLine>()];
        List<InputDigest> inputs = ReadInputs(fields, issues);
        return issues.Reported > before ? null : new SignedContent(new KitId(kit!), revision, asOf!.Value, state!, Array.AsReadOnly(lines), inputs.AsReadOnly(), policy, version!);
    }

    internal IReadOnlyList<PositiveAccounting> AccountingsOf(EntryId id) => [.. Lines
        .Where(static line => line is { IsAccounted: true, OldestAt: not null, Receipt.IsEmpty: true })
        .Select(line => BasisOf(line.Basis) is var basis and not AccountingBasis.None
            ? new PositiveAccounting { Kit = Kit, Label = line.Label, Tool = line.Tool, At = line.OldestAt!.Value, Basis = basis, SignedIn = id }
            : null)
        .OfType<PositiveAccounting>()];

    /// <summary>The bases that end an exposure; none for the others.</summary>
    private static AccountingBasis BasisOf(string word)
    {
        foreach (AccountingBasis basis in (ReadOnlySpan<AccountingBasis>)[AccountingBasis.Sighted, AccountingBasis.Counted, AccountingBasis.Read])
        {
            if (string.Equals(word, Words.Of(basis), StringComparison.Ordinal))
            {
                return basis;
            }
        }

        return AccountingBasis.None;
    }

    private static SignedLine? ReadLine(JsonFields fields)
    {
        string? label = fields.RequiredText("label", MaxTextLength);
        string? description = fields.RequiredText("description", MaxTextLength);
        string? tool = fields.Text("tool", null, IdText.MaxLength);
        string? state = fields.RequiredText("state", MaxTextLength);
        string? basis = fields.RequiredText("basis", MaxTextLength);
        DateTimeOffset? oldest = fields.Time("oldestAt");
        string? receipt = fields.Text("receipt", null, IdText.MaxLength);
        return label is null || description is null || state is null || basis is null ? null : new SignedLine(
            label, description, tool is null ? default : new ToolId(tool), state, basis, oldest, receipt is null ? default : new EntryId(receipt));
    }

    private static List<InputDigest> ReadInputs(JsonFields fields, IssueList issues)
    {
        var inputs = new List<InputDigest>();
        if (fields.Require("inputs") && fields.TryGet("inputs", out JsonElement element) && new JsonFields(element, fields.PlaceOf("inputs"), issues) is { IsObject: true } members)
        {
            foreach (JsonProperty input in element.EnumerateObject())
            {
                inputs.Add(new InputDigest(input.Name, ReadDigest(members, input.Name)));
            }
        }

        return inputs;
    }

    private static Digest ReadDigest(JsonFields fields, string name)
    {
        Digest digest = default;
        if (fields.RequiredText(name, MaxTextLength) is { } text && !Digest.TryParse(text, out digest))
        {
            fields.Report(name, new Reason(RecordRules.BadForm, ("expected", "\"sha256:\" and 64 lower-case hexadecimal digits"), ("found", SafeText.Excerpt(text))));
        }

        return digest;
    }
}
