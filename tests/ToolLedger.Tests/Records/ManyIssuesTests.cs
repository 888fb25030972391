using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using ToolLedger.Calibration;
using ToolLedger.Custody;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Ledger;
using ToolLedger.Policies;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tests.Custody;
using ToolLedger.Tests.Ledger;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Records;

/// <summary>Once more is wrong with a file than is kept, what follows is judged as before: a faulty entry is refused and never made.</summary>
public sealed class ManyIssuesTests
{
    // An object of a stored record has at most 64 members.
    private const int Entries = 180, MembersOfEach = 60;
    private const string Mark = "filled-";

    private static readonly string Unknown = string.Join(',', Enumerable.Range(0, MembersOfEach).Select(static k => $"\"q{k}\":1"));

    private delegate bool Parser(ReadOnlySpan<byte> utf8Json, out IReadOnlyList<RecordIssue> issues);

    private static readonly Dictionary<string, Parser> Parsers = new(StringComparer.Ordinal)
    {
        ["kit-manifest"] = static (ReadOnlySpan<byte> json, out IReadOnlyList<RecordIssue> issues) => KitManifest.TryParse(json, out _, out issues),
        ["tag-register"] = static (ReadOnlySpan<byte> json, out IReadOnlyList<RecordIssue> issues) => TagRegister.TryParse(json, out _, out issues),
        ["presentation"] = static (ReadOnlySpan<byte> json, out IReadOnlyList<RecordIssue> issues) => Presentation.TryParse(json, out _, out issues),
        ["inventory-sheet"] = static (ReadOnlySpan<byte> json, out IReadOnlyList<RecordIssue> issues) => InventorySheet.TryParse(json, out _, out issues),
        ["calibration-register"] = static (ReadOnlySpan<byte> json, out IReadOnlyList<RecordIssue> issues) => CalibrationRegister.TryParse(json, out _, out issues),
        ["calibration-register-2"] = static (ReadOnlySpan<byte> json, out IReadOnlyList<RecordIssue> issues) => CalibrationRegister.TryParse(json, out _, out issues),
        ["site-policy"] = static (ReadOnlySpan<byte> json, out IReadOnlyList<RecordIssue> issues) => SitePolicy.TryParse(json, out _, out issues),
        ["tag-history"] = static (ReadOnlySpan<byte> json, out IReadOnlyList<RecordIssue> issues) => TagHistoryRegister.TryParse(json, out _, out issues),
        ["custody-log"] = static (ReadOnlySpan<byte> json, out IReadOnlyList<RecordIssue> issues) => CustodyLog.TryParse(json, out _, out issues),
        ["ledger-entry"] = static (ReadOnlySpan<byte> json, out IReadOnlyList<RecordIssue> issues) => LedgerEntry.TryParse(json, out _, out issues),
    };

    public static TheoryData<string> Kinds => [.. Parsers.Keys];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_file_with_more_issues_than_are_kept_is_refused_and_nothing_is_thrown(string kind)
    {
        int most = 0;
        foreach (JsonObject good in Files(kind))
        {
            string[][] lists = [.. ListsOf(good, [])];
            foreach (string[] filled in lists)
            {
                foreach (string[] damaged in lists)
                {
                    JsonObject file = good.DeepClone().AsObject();
                    Damage(ListAt(file, damaged));
                    Fill(ListAt(file, filled));
                    most = Math.Max(most, IssueCountOf(kind, file));
                }

                foreach ((string[] place, string member) in MembersOf(good, []))
                {
                    foreach (JsonNode? wrong in (JsonNode?[])[new JsonObject(), JsonValue.Create(-1)])
                    {
                        JsonObject file = good.DeepClone().AsObject();
                        Fill(ListAt(file, filled));
                        ObjectAt(file, place)[member] = wrong;
                        most = Math.Max(most, IssueCountOf(kind, file));
                    }
                }
            }
        }

        // The kept ones and the last that says that there are more: the files did reach the limit.
        Assert.Equal(IssueList.MaxCount + 1, most);
    }

    [Fact]
    public void Reports_are_counted_beyond_those_that_are_kept()
    {
        var issues = new IssueList();
        for (int i = 0; i < 10_100; i++)
        {
            issues.Report("$", new Reason(RecordRules.MissingMember, ("member", "x")));
        }

        IReadOnlyList<RecordIssue> kept = issues;
        Assert.Equal((10_100, 10_001), (issues.Reported, kept.Count));
        Assert.Equal(RecordRules.MoreIssues, kept[^1].Reason.Kind);
        issues.Clear();
        Assert.Equal((0, 0), (issues.Reported, kept.Count));
    }

    private static int IssueCountOf(string kind, JsonObject file)
    {
        bool isRead = Parsers[kind](Encoding.UTF8.GetBytes(TextOf(file)), out IReadOnlyList<RecordIssue> issues);

        // What of a signed result is not looked up is not judged.
        Assert.Equal(issues.Count == 0, isRead);
        return issues.Count;
    }

    /// <summary>Files of the kind, with every list that its schema knows.</summary>
    private static IEnumerable<JsonObject> Files(string kind)
    {
        string schema = RepositoryFiles.ReadText("docs", "schemas", kind + ".schema.json");
        foreach (JsonObject file in GoodFiles(kind))
        {
            foreach ((string name, JsonNode? form) in JsonNode.Parse(schema)!["properties"]!.AsObject())
            {
                if (form?["type"] is JsonValue type && type.GetValueKind() == System.Text.Json.JsonValueKind.String && type.GetValue<string>() == "array" && !file.ContainsKey(name))
                {
                    file[name] = new JsonArray();
                }
            }

            yield return file;
        }
    }

    private static IEnumerable<JsonObject> GoodFiles(string kind) => kind switch
    {
        "kit-manifest" => [Read("tests", "ToolLedger.Tests", "Kits", "Data", "kit-manifest.json")],
        "tag-register" => [Read("tests", "ToolLedger.Tests", "Tools", "Data", "tag-register.json")],
        "presentation" => [Read("tests", "ToolLedger.Tests", "Reads", "Data", "presentation.json")],
        "inventory-sheet" => [Read("samples", "ShiftCloseout", "demo", "counts.json")],
        "calibration-register" => [Read("samples", "ShiftCloseout", "demo", "calibration.json")],
        "calibration-register-2" => [WithEvents(Read("samples", "ShiftCloseout", "demo", "calibration.json"))],
        "site-policy" => [WithModel(Read("samples", "ShiftCloseout", "demo", "policy-stated-risk.json"))],
        "tag-history" => [Read("samples", "ShiftCloseout", "demo", "tag-history.json")],
        "custody-log" => [JsonNode.Parse(new CustodyLog(CustodyLogJsonTests.OneOfEach()).ToJson())!.AsObject()],
        _ => LedgerScene.OneOfEach().Select(static content => JsonNode.Parse(LedgerScene.Entry(content).ToJson())!.AsObject()),
    };

    private static JsonObject Read(params string[] path) => JsonNode.Parse(RepositoryFiles.Read(path))!.AsObject();

    private static JsonObject WithEvents(JsonObject file)
    {
        file["schema"] = "toolledger/calibration-register/2";
        file["events"] = new JsonArray([.. ((string[])["plan", "label", "check", "condition", "extension", "use"]).Select(static kind => JsonNode.Parse(
            $$"""{"kind": "{{kind}}", "tool": "T1", "recordedAt": "2026-09-01T07:30:00+02:00", "recordedBy": "P-1"}"""))]);
        return file;
    }

    private static JsonObject WithModel(JsonObject file)
    {
        JsonObject presence = ObjectsIn(file).First(static part => part.ContainsKey("kitRiskLimit"));
        presence["models"] = new JsonArray(JsonNode.Parse(
            """{"station": "S", "obscuredShare": 0.05, "present": {"a": 3, "b": 10}, "strayShare": 0.02, "stray": {"a": 0.4, "b": 60}}"""));
        return file;
    }

    private static IEnumerable<JsonObject> ObjectsIn(JsonObject part) =>
        [part, .. part.Select(static member => member.Value).OfType<JsonObject>().SelectMany(ObjectsIn)];

    /// <summary>The lists in objects, by the names that lead to them.</summary>
    private static IEnumerable<string[]> ListsOf(JsonObject part, string[] place) => part.SelectMany(member => member.Value switch
    {
        JsonArray => [[.. place, member.Key]],
        JsonObject inner => ListsOf(inner, [.. place, member.Key]),
        _ => (IEnumerable<string[]>)[],
    });

    private static IEnumerable<(string[] Place, string Member)> MembersOf(JsonObject part, string[] place) => part
        .Where(static member => member.Value is not JsonArray && member.Key is not "schema")
        .SelectMany(member => member.Value is JsonObject inner ? MembersOf(inner, [.. place, member.Key]).Append((place, member.Key)) : [(place, member.Key)]);

    private static JsonObject ObjectAt(JsonObject file, string[] place) => place.Aggregate(file, static (part, name) => part[name]!.AsObject());

    private static JsonArray ListAt(JsonObject file, string[] place) => ObjectAt(file, place[..^1])[place[^1]]!.AsArray();

    /// <summary>Puts a mark in front, for which the text has entries that are wrong in nothing but more than 10,100 unknown members.</summary>
    private static void Fill(JsonArray list) => list.Insert(0, Mark + list.OfType<JsonObject>().Select(static entry => entry["kind"]?.ToString()).FirstOrDefault());

    private static string TextOf(JsonObject file) => Regex.Replace(
        file.ToJsonString(),
        $"\"{Mark}(?<kind>[a-z-]*)\"",
        static match => string.Join(',', Enumerable.Repeat($$"""{"kind":"{{match.Groups["kind"].Value}}",{{Unknown}}}""", Entries)),
        RegexOptions.ExplicitCapture,
        TimeSpan.FromSeconds(10));

    /// <summary>Adds each entry again, with one member after the other left out or of another form.</summary>
    private static void Damage(JsonArray list)
    {
        JsonObject[] entries = [.. list.OfType<JsonObject>().DistinctBy(static entry => entry["kind"]?.ToString() + string.Join(',', entry.Select(static member => member.Key)))];
        list.Add(new JsonObject());
        foreach (JsonObject entry in entries)
        {
            foreach ((string[] place, string member) in MembersOf(entry, []))
            {
                JsonObject without = entry.DeepClone().AsObject();
                ObjectAt(without, place).Remove(member);
                list.Add(without);
                foreach (JsonNode? wrong in (JsonNode?[])[new JsonObject(), JsonValue.Create(""), JsonValue.Create(-1), JsonValue.Create("x"), null])
                {
                    JsonObject with = entry.DeepClone().AsObject();
                    ObjectAt(with, place)[member] = wrong;
                    list.Add(with);
                }
            }
        }
    }
}
