using System;
using System.Collections.Generic;
using System.Globalization;
using System.Text;
using System.Text.Json;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Custody;

/// <summary>Reads the members of a recorded fact. After an issue a stand-in is returned, so that reading goes on; what was made of stand-ins is thrown away.</summary>
internal sealed class EntryFields
{
    private const string StandIn = "?";

    // Within the years of records, so that values made from it are accepted.
    private static readonly DateTimeOffset StandInTime = DateTimeOffset.UnixEpoch;

    private readonly JsonFields fields;
    private readonly IssueList issues;
    private readonly int issuesBefore;

    internal EntryFields(JsonElement element, string place, IssueList issues)
    {
        issuesBefore = issues.Reported;
        this.issues = issues;
        fields = new JsonFields(element, place, issues);
        Kind = fields.RequiredText("kind", IdText.MaxLength) ?? "";
        Id = new EntryId(Text("id"));
        At = Time("at");
        By = new PersonId(Text("by"));
        Role = Optional("role", static text => new Role(text));
        Witness = Optional("witness", static text => new PersonId(text));
        Where = Place("where");
        Remark = OptionalText("remark", RecordEntry.MaxRemarkLength);
    }

    internal string Kind { get; }

    internal EntryId Id { get; }

    internal DateTimeOffset At { get; }

    internal PersonId By { get; }

    internal Role Role { get; }

    internal PersonId Witness { get; }

    internal Place Where { get; }

    internal string? Remark { get; }

    internal IssueList Issues => issues;

    internal bool HasIssue => issues.Reported > issuesBefore;

    /// <summary>Makes the fact; null if anything was wrong with its members.</summary>
    internal T? Made<T>(Func<EntryFields, T?> make)
        where T : RecordEntry
    {
        T? made = make(this);
        fields.End();
        return HasIssue ? null : made;
    }

    internal string PlaceOf(string name) => fields.PlaceOf(name);

    /// <summary>A member as it stands, or null and an issue.</summary>
    internal JsonElement? Element(string name) => fields.Require(name) && fields.TryGet(name, out JsonElement element) ? element : null;

    /// <summary>A member in its canonical form; where it has none, because a number in it is none or it is too large, an issue and nothing.</summary>
    internal byte[] Canonical(string name, JsonElement element)
    {
        if (CanonicalJson.TryCanonicalize(Encoding.UTF8.GetBytes(element.GetRawText()), out byte[]? bytes, out RecordIssue? issue))
        {
            return bytes;
        }

        fields.Report(name, issue.Reason);
        return [];
    }

    internal void Report(string name, Reason reason) => fields.Report(name, reason);

    internal string Text(string name, int maxLength = IdText.MaxLength) => fields.RequiredText(name, maxLength) ?? StandIn;

    internal string? OptionalText(string name, int maxLength = IdText.MaxLength) => fields.Text(name, null, maxLength);

    internal T Optional<T>(string name, Func<string, T> make)
        where T : struct => OptionalText(name) is { } text ? make(text) : default;

    internal KitId Kit(string name) => new(Text(name));

    internal ToolId Tool(string name) => new(Text(name));

    internal EntryId Entry(string name) => new(Text(name));

    internal Place Place(string name) => Optional(name, static text => new Place(text));

    internal DateTimeOffset Time(string name) => fields.RequiredTime(name) ?? StandInTime;

    internal DateTimeOffset? OptionalTime(string name) => fields.Time(name);

    internal bool Flag(string name) => fields.Flag(name, fallback: false);

    internal bool IsThere(string name) => fields.IsThere(name);

    internal int Int32(string name, int min, int max) => fields.Require(name) ? fields.Int32(name, min, min, max) : min;

    internal int? OptionalInt32(string name, int min, int max) => fields.IsThere(name) ? fields.Int32(name, min, min, max) : null;

    internal decimal? Number(string name, decimal limit, int decimals) => fields.IsThere(name) ? fields.Decimal(name, 0, -limit, limit, decimals) : null;

    internal T Word<T>(string name, params ReadOnlySpan<(string Word, T Value)> words) => fields.Require(name) ? fields.Word(name, words[0].Value, words) : words[0].Value;

    internal List<string> Texts(string name, int maxCount, int maxLength = IdText.MaxLength) => fields.Texts(name, maxCount, maxLength);

    /// <summary>A list of texts that must not be empty.</summary>
    internal List<string> SomeTexts(string name, int maxCount)
    {
        List<string> texts = fields.Require(name) ? Texts(name, maxCount) : [];
        if (texts.Count > 0)
        {
            return texts;
        }

        if (!HasIssue)
        {
            fields.Report(name, new Reason(RecordRules.OutOfRange, ("range", "at least one text"), ("found", "none")));
        }

        return [StandIn];
    }

    internal int[] LineNumbers(string name)
    {
        var numbers = new List<int>();
        foreach ((JsonElement item, string place) in fields.Items(name, KitManifest.MaxLineCount))
        {
            if (item.ValueKind == JsonValueKind.Number && item.TryGetInt32(out int number) && number is >= 1 and <= CustodyChecks.MaxLineNumber)
            {
                numbers.Add(number);
            }
            else
            {
                issues.Report(place, new Reason(RecordRules.OutOfRange,
                    ("range", string.Create(CultureInfo.InvariantCulture, $"a whole number from 1 to {CustodyChecks.MaxLineNumber}")), ("found", SafeText.Excerpt(item.GetRawText()))));
            }
        }

        return [.. numbers];
    }

    internal IEnumerable<JsonFields> Objects(string name, int maxCount) => fields.Objects(name, maxCount);

    internal Quantity Quantity(string name)
    {
        if (!fields.Require(name) || fields.Child(name) is not { } child)
        {
            return new Quantity(0, Unit.Each);
        }

        decimal amount = child.Require("amount") ? child.Decimal("amount", 0, 0, Records.Quantity.MaxAmount, Records.Quantity.MaxDecimalCount) : 0;
        var unit = new Unit(child.RequiredText("unit", IdText.MaxLength) ?? StandIn);
        child.End();
        return new Quantity(amount, unit);
    }

    /// <summary>A quantity of more than nothing.</summary>
    internal Quantity Some(string name)
    {
        Quantity quantity = Quantity(name);
        if (quantity.Amount > 0)
        {
            return quantity;
        }

        if (!HasIssue)
        {
            fields.Report(name, new Reason(RecordRules.OutOfRange, ("range", "a quantity of more than 0"), ("found", quantity.ToString())));
        }

        return new Quantity(1, Unit.Each);
    }

    internal Signature? Signature(string name) => fields.Child(name) is { } child ? ReadSignature(child) : null;

    internal Signature[] Signatures(string name, int maxCount)
    {
        var signatures = new List<Signature>();
        foreach (JsonFields item in fields.Objects(name, maxCount))
        {
            signatures.Add(ReadSignature(item));
        }

        return [.. signatures];
    }

    private static Signature ReadSignature(JsonFields child)
    {
        string person = child.RequiredText("person", IdText.MaxLength) ?? StandIn;
        DateTimeOffset at = child.RequiredTime("at") ?? StandInTime;
        string? role = child.Text("role", null, IdText.MaxLength);
        child.End();
        return new Signature { By = new PersonId(person), At = at, Role = role is null ? default : new Role(role) };
    }

    internal Digest Digest(string name)
    {
        Digest digest = default;
        if (OptionalText(name, 80) is { } text && !Records.Digest.TryParse(text, out digest))
        {
            fields.Report(name, new Reason(RecordRules.BadForm, ("expected", "\"sha256:\" and 64 lower-case hexadecimal digits"), ("found", SafeText.Excerpt(text))));
        }

        return digest;
    }
}
